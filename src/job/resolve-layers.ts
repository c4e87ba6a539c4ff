import { error, type Problem, warning } from '../problems/problem.ts';
import { defined } from '../read/fields/defined.ts';
import { lookUp } from '../read/fields/look-up.ts';
import type { Board } from '../shop/board.ts';
import * as defaults from '../shop/defaults.ts';
import type { Head } from '../shop/head.ts';
import type { Shop } from '../shop/shop.ts';
import type { Units } from '../units/units.ts';
import type { BenchRequest } from './bench.ts';
import type { JobInput } from './job-schema.ts';
import type { Bevel, LayerRequest } from './layer.ts';
import { allSides, namesNoSide } from './resolve-openings.ts';

type LayerInput = NonNullable<NonNullable<JobInput['mat']>['layers']>[number];

/** The layers of the mat; one top mat where the job names none. */
export function layersFrom(
  given: readonly LayerInput[] | undefined,
  bench: BenchRequest,
  headNamed: boolean,
  shop: Shop,
  units: Units,
  problems: Problem[],
): readonly LayerRequest[] {
  return (given ?? [{}]).map((layer, index) => {
    const path = ['mat', 'layers', index];
    const bevel = bevelFrom(layer.bevel, bench.head);
    if (headNamed) problems.push(...bevelProblems(bevel, bench.head, [...path, 'bevel']));
    if (index === 0 && layer.reveal !== undefined) {
      const message = 'the top mat has no layer above it that it could be revealed from';
      const hint = 'give the reveal to the layer below it';
      problems.push(error('reveal-top', [...path, 'reveal'], message, hint));
    }
    return {
      board: boardFrom(layer.board, index, shop, [...path, 'board'], problems),
      bevel,
      trimBack: layer.trimBack ?? defaults.trimBack(units, index, bench.stack),
      ...revealFrom(layer.reveal),
      ...defined({ spacer: layer.spacer }),
    };
  });
}

function revealFrom(given: LayerInput['reveal']): Pick<LayerRequest, 'reveal' | 'reveals'> {
  if (given === undefined || namesNoSide(given)) return {};
  return given.single === true ? { reveal: given.top! } : { reveals: allSides(given) };
}

function bevelFrom(given: LayerInput['bevel'], head: Head): Bevel {
  return { angle: given?.angle ?? head.bevel, reverse: given?.reverse ?? false };
}

function bevelProblems(bevel: Bevel, head: Head, path: Problem['path']): readonly Problem[] {
  if (bevel.angle === head.bevel) return [];
  const message = `the layer has a bevel of ${bevel.angle}°, the head ${head.id} cuts ${head.bevel}°`;
  const hint = `the pattern is drawn for ${bevel.angle}°: cut it with a head of that angle`;
  return [warning('bevel-not-head', path, message, hint)];
}

function boardFrom(
  given: LayerInput['board'],
  index: number,
  shop: Shop,
  path: Problem['path'],
  problems: Problem[],
): Board {
  if (given === undefined) return defaults.BOARD;
  if (typeof given === 'string') return lookUp('board', given, shop.boards, path, problems) ?? defaults.BOARD;
  const name = given.name ?? `board ${index + 1}`;
  return {
    id: name,
    name,
    thickness: given.thickness,
    colour: given.colour ?? defaults.BOARD_COLOUR,
    core: given.core ?? defaults.BOARD_CORE,
    sheets: [],
    directional: false,
    ...defined({ plies: given.plies }),
  };
}
