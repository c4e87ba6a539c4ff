/** How several openings lie on the mat. Lengths are mm, between face openings of the top mat. */
export interface ArrangeRequest {
  /** How many openings each row has, from the top; their sum is the number of openings that are arranged. */
  readonly rows: readonly number[];
  /** True where the openings of all rows stand in common columns, as wide as the widest of them. */
  readonly columns: boolean;
  /** Between neighbours in a row, and between rows. */
  readonly across?: number;
  readonly down?: number;
  /** How the openings of a row lie to each other in height. */
  readonly align: 'centre' | 'base' | 'top';
  /** Borders and gaps all alike in each direction, but for a weighting. */
  readonly fill: boolean;
  /** More below a row than the gap: a length added, or the gap times a ratio. */
  readonly rowWeighting?: { readonly add: number } | { readonly ratio: number };
}

/** Where one opening lies: mat edge to its face opening in the top mat; centred in a direction that says nothing. */
export interface PlaceRequest {
  readonly left?: number;
  readonly right?: number;
  readonly top?: number;
  readonly bottom?: number;
  /** Under the opening of that name, centred on it. */
  readonly below?: { readonly opening: string; readonly gap: number };
}

/** What one opening does with an under mat: its own reveal by side, or nothing is seen of it. */
export type OpeningStep = BySides | 'same' | 'skip';
export interface BySides {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** A line on the face of the top mat, parallel to an opening. */
export interface DecorRequest {
  readonly kind: 'groove' | 'ink';
  /** Face opening of the top mat to the middle of the line. */
  readonly distance: number;
  /** Of the line as it is seen. */
  readonly width: number;
  /** Degrees from the face, of a groove's two sides. */
  readonly angle: number;
  /** Only along these sides; undefined all round. */
  readonly sides?: readonly ('top' | 'right' | 'bottom' | 'left')[];
}
