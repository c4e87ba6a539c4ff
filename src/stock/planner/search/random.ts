/**
 * The stock plan's own random numbers: xorshift32 (G. Marsaglia, Xorshift RNGs, 2003, triple 13-17-5), whole numbers
 * only, so that a seed gives the same plan on every machine.
 */
export class Random {
  private state: number;

  constructor(seed: number) {
    // Knuth's multiplicative hash keeps neighbouring seeds apart; a state of 0 would stay 0.
    this.state = Math.imul((seed | 0) + 1, 0x9e3779b1) | 0 || 0x2545f491;
    for (let i = 0; i < 8; i++) this.next();
  }

  /** A whole number from 0 to 2³² − 1. */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x >>> 0;
  }

  /** A whole number from 0 to `n` − 1. */
  below(n: number): number {
    return this.next() % n;
  }
}
