/** Hears now and then how far a plan is, from 0 to 1; what it answers says whether to go on. */
export type Watch = (share: number) => boolean;

/** Steps between two calls. */
const EVERY = 1_000_000;

/**
 * Counts the steps of all parts of a plan and tells of them. Every loop ends where its steps are used up: so work is
 * stopped by saying that they are.
 */
export class Pace {
  stopped = false;
  private spent = 0;
  private told = 0;

  /** `all`: steps that the plan takes at the most, roughly. */
  constructor(
    private readonly watch: Watch,
    private readonly all: number,
  ) {}

  spend(steps: number): void {
    this.spent += steps;
    if (this.stopped || this.spent - this.told < EVERY) return;
    this.told = this.spent;
    this.stopped = !this.watch(Math.min(1, this.spent / this.all));
  }
}
