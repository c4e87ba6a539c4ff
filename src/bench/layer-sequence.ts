import type { Batch, Pass } from './pass.ts';

/** One way through a layer, as far as it matters to its neighbours. */
export interface Candidate {
  readonly pass: Pass;
  /** Changes of the guide within the layer. */
  readonly changes: number;
  readonly first: Batch;
  readonly last: Batch;
}

interface Cost {
  readonly changes: number;
  readonly turns: number;
  readonly up: number;
}

interface Chain extends Cost {
  readonly last: number | undefined;
  readonly steps: readonly { readonly layer: number; readonly chosen: Candidate }[];
}

function compare(a: Cost, b: Cost): number {
  if (a.changes !== b.changes) return a.changes - b.changes;
  if (Math.abs(a.turns - b.turns) > 1e-9) return a.turns - b.turns;
  return b.up - a.up;
}

/** What is alike is settled by the layers from the top mat down. */
function isBetter(a: Chain, b: Chain): boolean {
  const cost = compare(a, b);
  if (cost !== 0) return cost < 0;
  const i = a.steps.findIndex((step, n) => step.layer !== b.steps[n]!.layer);
  return i >= 0 && a.steps[i]!.layer < b.steps[i]!.layer;
}

/** The ways into a layer that can be best: to each last setting from anywhere, and from each first setting without a change. */
class Entries {
  private readonly anywhere = new Map<number, Candidate>();
  private readonly joined = new Map<number, Map<number, Candidate>>();

  constructor(candidates: readonly Candidate[]) {
    for (const candidate of candidates) {
      const from = candidate.first.setting;
      const known = this.joined.get(from) ?? new Map<number, Candidate>();
      this.joined.set(from, known);
      keep(this.anywhere, candidate);
      keep(known, candidate);
    }
  }

  from(setting: number | undefined): { readonly chosen: Candidate; readonly change: number }[] {
    const change = setting === undefined ? 0 : 1;
    const joined = setting === undefined ? undefined : this.joined.get(setting);
    return [
      ...[...(joined?.values() ?? [])].map((chosen) => ({ chosen, change: 0 })),
      ...[...this.anywhere.values()].map((chosen) => ({ chosen, change })),
    ];
  }
}

function keep(best: Map<number, Candidate>, candidate: Candidate): void {
  const to = candidate.last.setting;
  const known = best.get(to);
  const cost = (c: Candidate): Cost => ({ changes: c.changes, turns: c.pass.turns, up: c.pass.up });
  if (known === undefined || compare(cost(candidate), cost(known)) < 0) best.set(to, candidate);
}

/**
 * One candidate for each layer, together of the fewest changes, then fewest turns, then most strokes with TOP up; the
 * layers in the order given, or in any.
 */
export function layerSequence(layers: readonly (readonly Candidate[])[], anyOrder: boolean): Chain['steps'] {
  const entries = layers.map((candidates) => new Entries(candidates));
  let stage = new Map<string, { done: number; chain: Chain }>();
  stage.set('', { done: 0, chain: { changes: 0, turns: 0, up: 0, last: undefined, steps: [] } });
  for (let n = 0; n < layers.length; n++) {
    const next = new Map<string, { done: number; chain: Chain }>();
    for (const { done, chain } of stage.values()) {
      entries.forEach((entry, layer) => {
        if ((done & (1 << layer)) !== 0 || (!anyOrder && layer !== n)) return;
        for (const { chosen, change } of entry.from(chain.last)) {
          const longer: Chain = {
            changes: chain.changes + chosen.changes + change,
            turns: chain.turns + chosen.pass.turns,
            up: chain.up + chosen.pass.up,
            last: chosen.last.setting,
            steps: [...chain.steps, { layer, chosen }],
          };
          const key = `${done | (1 << layer)}|${longer.last}`;
          const known = next.get(key);
          if (known === undefined || isBetter(longer, known.chain)) {
            next.set(key, { done: done | (1 << layer), chain: longer });
          }
        }
      });
    }
    stage = next;
  }
  const chains = [...stage.values()].map(({ chain }) => chain);
  return chains.reduce((best, chain) => (isBetter(chain, best) ? chain : best)).steps;
}
