import type { Report } from '../bench/report.ts';
import { showLength, showNear, showSize } from '../units/print.ts';
import type { LengthUnit } from '../units/units.ts';

/** The sizes and settings in plain words, in the job's units. */
export function sizesInWords(report: Report): readonly string[] {
  const unit = report.units as LengthUnit;
  const len = (mm: number): string => showNear(mm, unit);
  const size = (s: { width: number; height: number }): string => `${len(s.width)} × ${len(s.height)}`;
  const sides = (b: Readonly<Record<'top' | 'right' | 'bottom' | 'left', number>>): string =>
    `top ${len(b.top)}, sides ${Math.abs(b.left - b.right) < 0.005 ? len(b.left) : `${len(b.left)} left and ${len(b.right)} right`}, bottom ${len(b.bottom)}`;
  const lines = [
    report.title,
    `  mat        ${showSize(report.outer, unit)} outside, ${Number(report.unitedInches.toFixed(4))} united inches`,
    `  border     ${sides(report.border)}`,
  ];
  for (const layer of report.layers) {
    lines.push(
      `  ${layer.name.padEnd(10)} blank ${showSize(layer.blank, unit)}, ${layer.board} ${showLength(layer.thickness, 'mm')}, ${bevel(layer.bevel)}`,
    );
  }
  for (const opening of report.openings) {
    lines.push(`  ${opening.name.padEnd(10)} sight ${size(opening.sight)}`);
    for (const layer of opening.layers) {
      lines.push(`             layer ${layer.layer}: face ${size(layer.face)}, line on the back ${size(layer.back)}`);
    }
    if (opening.artwork !== undefined) {
      const { overlap, floated } = opening.artwork;
      lines.push(
        floated
          ? `             artwork ${showSize(opening.artwork.size, unit)} floated`
          : `             artwork ${showSize(opening.artwork.size, unit)}, covered at the sight: ${sides(overlap)}`,
      );
    }
  }
  for (const { text, box, square, bridges } of report.lettering ?? []) {
    const held = bridges === 0 ? '' : `, ${bridges} bridges`;
    lines.push(
      `  lettering  ${text}: ${size(box)}, ${square ? 'square cut' : 'bevelled'}${held}, by template or machine`,
    );
  }
  lines.push(`  glazing    ${showSize(report.glazing, unit)}, backing the same`);
  if (report.strokes.length > 0)
    lines.push(
      `  head       ${report.bench.head}${report.bench.calibrated ? '' : ', not calibrated'}`,
      '  guide, in the order of work (sides named as from the face; on pattern and ticket, seen from the BACK, left and right change places):',
    );
  for (const s of [...report.strokes].sort((a, b) => a.order - b.order)) {
    const far = s.guideFrom === 'far' && !s.beyondGuide ? ', far edge on the guide' : '';
    const past = s.bar === undefined ? '' : ', lay the bar on its line';
    const setting = s.beyondGuide ? 'guide off' : settingText(s.setting);
    const changed = s.planned === undefined ? '' : `, changed from ${settingText(s.planned)}`;
    const cut = s.cut === true ? ', cut already' : '';
    lines.push(
      `  ${String(s.order).padStart(4)}  ${(report.layers[s.layer - 1]?.name ?? '').padEnd(12)} ${s.side.padEnd(7)} ${setting}${far}${past}${changed}${cut}`,
    );
  }
  if (report.grooves !== undefined) {
    lines.push('  grooves, on the FACE, both passes in the order of work:');
    for (const s of [...report.grooves].sort((a, b) => a.order - b.order)) {
      const edge = `${s.guideFrom === 'far' ? 'far' : 'near'} edge${s.beyondGuide ? '' : ' on the guide'}`;
      const setting = s.beyondGuide ? 'guide off' : settingText(s.setting);
      lines.push(
        `  ${String(s.order).padStart(4)}  opening ${s.opening}, line ${s.line}, ${s.side.padEnd(7)} ${setting}, ${edge}`,
      );
    }
  }
  for (const moved of report.bench.moved)
    lines.push(`  snapped: ${moved.what} from ${len(moved.from)} to ${len(moved.to)}`);
  if (report.asCut !== undefined) {
    lines.push(
      report.asCut.changed.length === 0
        ? '  as cut: nothing is changed by it'
        : '  as cut: changed, everything else is as it was planned:',
      ...report.asCut.changed.map((each) => `    ${each.what}: ${len(each.to)}, planned ${len(each.from)}`),
    );
  }
  return lines;
}

const settingText = ({ text, sense }: Report['strokes'][number]['setting']): string =>
  sense === 'exact' ? text : `${text} ${sense}`;

function bevel({ angle, reverse }: { angle: number; reverse: boolean }): string {
  return angle === 90 ? 'square cut' : `${reverse ? 'reverse ' : ''}bevel ${angle}°`;
}
