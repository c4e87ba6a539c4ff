/** A code that a problem or a warning can have: what it means, and what to do. The messages page is made from these. */
export interface CodeEntry {
  readonly means: string;
  readonly remedy: string;
}

export type Codes = Readonly<Record<string, CodeEntry>>;

export const entry = (means: string, remedy: string): CodeEntry => ({ means, remedy });
