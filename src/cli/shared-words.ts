import type { Report } from '../bench/report.ts';
import type { SharedSetting } from '../bench/settings.ts';

/** Settings at which the guide can stay while several jobs are cut, each with all that it serves. */
export function sharedInWords(shared: readonly SharedSetting[], reports: readonly Report[]): readonly string[] {
  if (shared.length === 0) return ['no setting of the guide serves more than one of these jobs'];
  return [
    'set the guide once for several jobs (sides named as from the face):',
    ...shared.flatMap(({ text, sense, uses }) => [
      `  ${sense === 'exact' ? text : `${text} ${sense}`}`,
      ...[...new Set(uses.map((use) => use.job))].map((job) => {
        const report = reports[job]!;
        const places = uses
          .filter((use) => use.job === job)
          .map((use) => {
            const opening = report.openings.length === 1 ? '' : ` of ${report.openings[use.opening - 1]!.name}`;
            return `${report.layers[use.layer - 1]!.name} ${use.side}${opening}`;
          });
        return `      ${report.title}: ${places.join(', ')}`;
      }),
    ]),
  ];
}
