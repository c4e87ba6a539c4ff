/** Of every sheet that is clipped to a board: wide enough at the top for the clip. */
export const TICKET_MARGIN = { top: 14.5, side: 12.5, bottom: 8.5 } as const;
