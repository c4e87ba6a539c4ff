import { type Head, handHeld } from '../../shop/head.ts';

/**
 * The movements of one stroke, in their order, for the head that is used: said once on whatever leads to cutting, the
 * same words everywhere. A holding pin's tip keeps the head still while the blade goes in: a head that creeps then makes a hook.
 */
function strokeMovements(head: Pick<Head, 'straightedge' | 'pin'>): readonly string[] {
  const pin = head.pin ? ['holding pin down'] : [];
  const out = head.pin ? 'blade out, pin up' : 'blade out';
  if (handHeld(head)) {
    return [
      'straightedge laid at its distance and held so that it can’t shift',
      'head against it, scribe on S',
      ...pin,
      'blade in',
      'one movement along it to E',
      out,
      'turn the board',
    ];
  }
  return [
    'board tucked into guide and squaring edge so that it can’t shift',
    'scribe on S',
    ...pin,
    'blade in',
    'one pull to E',
    out,
    'turn the board',
  ];
}

/** The same as a sentence. */
export const strokeSentence = (head: Pick<Head, 'straightedge' | 'pin'>): string =>
  `One stroke: ${strokeMovements(head).join('; ')}.`;
