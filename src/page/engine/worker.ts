import type { Step } from '../../outputs/options.ts';
import type { Answered, AskName, Asks } from './answers.ts';

interface Waiting {
  readonly name: AskName;
  readonly request: unknown;
  readonly done: (answer: unknown) => void;
  readonly failed: (error: Error) => void;
  readonly progress: ((step: Step) => void) | undefined;
}

/** Why a question has no answer: a later one of its kind, or the one who asked, took it back. */
export class TakenBack extends Error {}

/** The page's side of a worker: started when it is first asked, and anew after it was stopped. */
export class Asking {
  readonly #script: () => Promise<Blob>;
  #worker: Promise<Worker> | undefined;
  #number = 0;
  readonly #waiting = new Map<number, Waiting>();

  constructor(script: () => Promise<Blob>) {
    this.#script = script;
  }

  /** Gives its promise at once, before the worker stands, so that who asked hears of a stop in between too. */
  ask<Name extends AskName>(
    name: Name,
    request: Asks[Name]['request'],
    progress?: (step: Step) => void,
  ): Promise<Asks[Name]['answer']> {
    const number = ++this.#number;
    const answer = new Promise<Asks[Name]['answer']>((done, failed) => {
      this.#waiting.set(number, { name, request, done: done as Waiting['done'], failed, progress });
    });
    this.#post(number);
    return answer;
  }

  /** Stops whatever is being made; what else was asked is asked again of a new worker. */
  stop(): void {
    const worker = this.#worker;
    this.#worker = undefined;
    worker?.then(
      (each) => each.terminate(),
      () => undefined,
    );
    for (const [number, { name, failed }] of [...this.#waiting]) {
      if (name === 'make' || name === 'lay') {
        this.#waiting.delete(number);
        failed(new TakenBack('stopped'));
      } else this.#post(number);
    }
  }

  #post(number: number): void {
    this.#worker ??= this.#start();
    this.#worker.then(
      (worker) => {
        const waiting = this.#waiting.get(number);
        if (waiting !== undefined) worker.postMessage({ number, name: waiting.name, request: waiting.request });
      },
      (error: Error) => this.#failAll(error),
    );
  }

  #failAll(error: Error): void {
    const all = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { failed } of all) failed(error);
  }

  async #start(): Promise<Worker> {
    const url = URL.createObjectURL(await this.#script());
    const worker = new Worker(url);
    worker.onmessage = ({ data }: MessageEvent<Answered>) => this.#hear(data);
    worker.onerror = (event) => {
      this.#worker = undefined;
      this.#failAll(new Error(event.message));
    };
    return worker;
  }

  #hear(answered: Answered): void {
    const waiting = this.#waiting.get(answered.number);
    if (waiting === undefined) return;
    if ('step' in answered) {
      waiting.progress?.(answered.step);
      return;
    }
    this.#waiting.delete(answered.number);
    if ('broken' in answered) waiting.failed(new Error(answered.broken));
    else waiting.done(answered.answer);
  }
}
