import type { LotWork } from '../../bench/work/lots.ts';
import type { Fonts } from '../../fonts/model.ts';
import { type Block, stacked } from '../../text/block.ts';
import { ellipsized } from '../../text/line.ts';
import { line, type TextBlock } from '../../text/paragraph.ts';
import { discBlock, runsBlock, tickBlock, turnBlock } from '../../text/signs.ts';
import { BOLD, FINE, HEAD, inBold, type Style, TEXT } from '../../text/styles.ts';
import { backSide } from '../words/back-side.ts';
import { lotName, type RunCut } from './rounds.ts';
import { laidWords, readingBlock, settingRead, turnWords } from './rows.ts';

/** One setting of a day, and every stroke that is cut at it, lot by lot, with a box to tick for each pass. */
export function runRow(
  cuts: readonly RunCut[],
  works: readonly LotWork[],
  names: readonly string[],
  width: number,
  text: Style,
  fonts: Fonts,
): Block {
  const lots = cuts.map((cut) => runsBlock(lotRuns(cut, works, names, width, text, fonts), width, TEXT, fonts));
  return stacked([setBlock(cuts, works, fonts), ...lots], 0.9);
}

/** The reading at arm's length; where no guide is set each stroke says how it is laid. */
function setBlock(cuts: readonly RunCut[], works: readonly LotWork[], fonts: Fonts): TextBlock {
  const { setting } = cuts[0]!.strokes[0]!.step;
  if (setting === undefined) {
    return line(works[cuts[0]!.lot]!.lot.head.handHeld ? 'by straightedge' : 'guide off', HEAD, fonts);
  }
  const block = readingBlock(settingRead(setting), fonts);
  return { ...block, height: block.base };
}

function lotRuns(
  { lot, strokes }: RunCut,
  works: readonly LotWork[],
  names: readonly string[],
  width: number,
  text: Style,
  fonts: Fonts,
): readonly (readonly TextBlock[])[] {
  const { lot: own, source } = works[lot]!;
  const name = ellipsized(lotName(own, works, names), inBold(text), width, fonts);
  const several = source.mat.openings.length > 1;
  return [
    [line(`${name}:`, inBold(text), fonts)],
    ...strokes.map(({ step, stroke }): readonly TextBlock[] => {
      const turned = turnWords(step.turn);
      const opening = several ? `${source.mat.openings[step.opening - 1]!.name} ` : '';
      const part = stroke.part === undefined || own.work === 'groove' ? '' : ` ${stroke.part}`;
      const side = `${own.up === 'back' ? backSide(stroke) : stroke.side}${part}`;
      const laid = laidWords(step);
      const { rest } = step;
      const distance =
        rest === undefined || rest.distance < 0
          ? ''
          : `${rest.setting.text}${rest.setting.sense === 'exact' ? '' : ` ${rest.setting.sense}`}, `;
      return [
        ...(turned === undefined ? [] : [line(turned.text, FINE, fonts)]),
        ...(turned?.clockwise === undefined ? [] : [turnBlock(turned.clockwise, FINE)]),
        discBlock(`${step.stroke}`, BOLD, fonts),
        ...own.depths.map(() => tickBlock(BOLD, fonts, stroke.cut === true)),
        line(ellipsized(`${opening}${side}`, BOLD, width / 2, fonts), BOLD, fonts),
        ...(laid === undefined ? [] : [line(`${distance}${laid}`, FINE, fonts)]),
        ...(step.far && step.setting !== undefined ? [line('FAR edge', BOLD, fonts)] : []),
      ];
    }),
  ];
}
