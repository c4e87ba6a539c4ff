/** A file of the folder that a piece came from, and the mark of the text that was last read or saved there. */
export interface Home {
  readonly name: string;
  readonly mark: string | undefined;
}

/** By the ids of pieces. */
export const homes = new Map<string, Home>();
