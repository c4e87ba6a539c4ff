import * as z from 'zod/mini';
import { defined } from '../problems/defined.ts';
import type { Problem } from '../problems/problem.ts';
import { type Day, day } from '../read/fields/day.ts';
import { described, jobNumber, line, oneOf, part, record, whole } from '../read/fields/fields.ts';
import { NO_HEAD } from '../shop/head.ts';
import { makeSchema, type OfAJob } from '../shop/make-list.ts';
import type { Shop } from '../shop/shop.ts';
import { LENGTH_UNITS, type LengthUnit, type Units } from '../units/units.ts';
import { type ArrangeRequest, arrangeFrom, arrangeSchema } from './arrange.ts';
import { type AsCutRequest, asCutFrom, asCutSchema } from './as-cut.ts';
import { type BenchRequest, benchFrom, benchSchema } from './bench.ts';
import { type LetteringRequest, letteringFrom, letteringSchema } from './lettering.ts';
import { type MatRequest, matFrom, matSchema } from './mat.ts';
import { type OpeningRequest, openingFrom, openingsSchema } from './opening.ts';
import { type PriceRequest, priceFrom, priceSchema } from './price.ts';
import { type PrintRequest, printFrom, printSchema } from './print.ts';

/**
 * A checked job with everything of the shop that it names already looked up. Lengths are mm.
 * A value that the text left out and the solver derives is `undefined` here; every other default is filled in.
 */
export interface Job {
  readonly title: string;
  readonly number?: string;
  readonly customer?: string;
  /** The day on which it is wanted. */
  readonly due?: Day;
  readonly units: Units;
  readonly mat: MatRequest;
  readonly openings: readonly OpeningRequest[];
  /** How the openings without a place of their own lie; one alone needs none. */
  readonly arrange?: ArrangeRequest;
  /** Texts that are cut through the top mat. */
  readonly lettering?: readonly LetteringRequest[];
  readonly count: number;
  /** What was agreed on with the customer. */
  readonly price?: PriceRequest;
  readonly bench: BenchRequest;
  readonly print: PrintRequest;
  /** What is made of it, instead of what the shop says. */
  readonly make?: readonly OfAJob[];
  /** What was cut already, where it did not come out as planned. */
  readonly asCut?: AsCutRequest;
}

/** The whole job, bare numbers being in `unit`. A new key is one line here, one above and one in `jobFrom`. */
export function jobSchema(unit: LengthUnit) {
  const job = record(
    {
      title: z.optional(
        line('What the piece is called; the name of the file where it is left out', ['Heron, linocut']),
      ),
      number: z.optional(jobNumber('Its number in the shop’s own count, for every sheet', ['A-07', 41])),
      customer: z.optional(line('Whom it is for', ['Saltmarsh Print Room'])),
      due: z.optional(day('The day on which it is wanted, for every sheet', ['2031-03-12'])),
      units: z.optional(oneOf('The unit of bare numbers, and of what documents print; in without it', LENGTH_UNITS)),
      mat: part(() => matSchema(unit)),
      openings: openingsSchema(unit),
      arrange: part(() => arrangeSchema(unit)),
      lettering: part(() => letteringSchema(unit)),
      count: z.optional(whole('How many alike', [1, 40], 1, 999)),
      price: part(priceSchema),
      bench: part(() => benchSchema(unit)),
      print: part(() => printSchema(unit)),
      make: part(makeSchema),
      asCut: part(() => asCutSchema(unit)),
    },
    'a map of keys: title, units, mat, openings …',
  );
  return described(job, 'A framed piece: its mat, its opening and how it is made');
}

/** A job as the schema leaves it: lengths in mm, nothing looked up, nothing filled in. */
type JobInput = z.output<ReturnType<typeof jobSchema>>;

/** The job with everything looked up in the shop. Where problems hold an error, it is not to be used. */
export function jobFrom(
  input: JobInput,
  shop: Shop,
  units: Units,
  name: string,
): { readonly job: Job; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const bench = benchFrom(input.bench ?? {}, shop, units, problems);
  const openings = input.openings.map((opening) => openingFrom(opening, units, bench.head.bevel));
  const mat = matFrom(input.mat ?? {}, bench, (input.bench?.head ?? NO_HEAD) !== NO_HEAD, shop, units, problems);
  const asCut =
    input.asCut === undefined ? undefined : asCutFrom(input.asCut, mat.layers.length, openings.length, problems);
  const free = openings.filter((opening) => opening.place === undefined).length;
  const job: Job = {
    title: input.title ?? name,
    units,
    mat,
    openings,
    count: input.count ?? 1,
    bench,
    print: printFrom(input.print ?? {}, shop, units, problems),
    ...defined({
      number: input.number,
      customer: input.customer,
      due: input.due,
      arrange: arrangeFrom(input.arrange, free),
      lettering: letteringFrom(input.lettering, units),
      asCut,
      price: input.price && priceFrom(input.price),
      make: input.make,
    }),
  };
  return { job, problems };
}
