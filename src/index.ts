/**
 * The library's face: it knows neither Node nor a browser. Every function gives a Result, for a wrong call too, and
 * nothing throws for wrong input. `node.ts` is the same for Node.
 */

import type { Stroke } from './bench/model.ts';
import { type SharedSetting, sharedSettings as settingsOf } from './bench/settings.ts';
import type { Wait } from './bench/work/lots.ts';
import type { OrderOfWork } from './bench/work/model.ts';
import { work as workOf } from './bench/work/work.ts';
import { type Calibration, type CalibrationRequest, calibrate as calibrateTool } from './calibrate/calibrate.ts';
import type { DayList, Mark } from './day/list/day-list.ts';
import type { DayRow, ListedJob } from './day/list/rows.ts';
import type { TableJob, TableJobs } from './day/table/jobs-from-table.ts';
import type { WrittenTable } from './day/table/table-from-jobs.ts';
import type { Drawing } from './drawing/model.ts';
import { SCHEMA_KINDS, type SchemaKind, jsonSchema as schemaOf } from './job/json-schema.ts';
import { type BuildOptions, type Built, build as buildJob } from './outputs/build.ts';
import { called, calledLater, KEYS, wrongArgument, wrongOptions, wrongWord } from './outputs/calls.ts';
import { type Everything, everything as everyOutput, type Limits } from './outputs/everything.ts';
import { face as drawFace, faceSvg as writeFace } from './outputs/face.ts';
import { type Made, make as makeOutput } from './outputs/make.ts';
import type { OutputOptions, Surroundings } from './outputs/options.ts';
import type { Work } from './outputs/output.ts';
import { type Prepared, prepare as prepareOutput } from './outputs/prepare.ts';
import type { OutputId } from './outputs/records.ts';
import {
  type Solved,
  type SolveOptions,
  type Source,
  solveJob as solve,
  solveLoading as solveWithFonts,
} from './outputs/solve-job.ts';
import { type OutputFile, write as writeOutput } from './outputs/write.ts';
import { findPaper as find, type PaperQuestion } from './papers/find.ts';
import type { Paper } from './papers/model.ts';
import { type Problem, type Result, succeed } from './problems/problem.ts';
import type { EditPath } from './read/edit/find-node.ts';
import { clearField as clear, setField as set } from './read/edit/set-field.ts';
import type { Plain } from './read/edit/yaml-print.ts';
import { readShop as read } from './shop/read-shop.ts';
import { CALIBRATED } from './shop/readings/readings.ts';
import type { Shop } from './shop/shop.ts';
import type { CutNode, StockInput, StockPlan } from './stock/planner/model.ts';
import { planStock as plan } from './stock/planner/plan.ts';
import { type CutSequence, cutSequence as sequenceOf } from './stock/planner/sequence.ts';
import { reasons as reasonsOf, type Why } from './why.ts';

export type { Report } from './bench/report.ts';
export type { SharedSetting } from './bench/settings.ts';
export type { Wait } from './bench/work/lots.ts';
export type { CutStep, Lot, LotStep, OrderOfWork, ToolStep, WorkStep } from './bench/work/model.ts';
export { bookPlan, cutPlan, notePlan, undoPlan } from './booking.ts';
export type { Calibration, CalibrationRequest } from './calibrate/calibrate.ts';
export type { DayList, Mark, Marked } from './day/list/day-list.ts';
export type { DayRow, ListedJob } from './day/list/rows.ts';
export type { TableJob, TableJobs } from './day/table/jobs-from-table.ts';
export type { WrittenTable } from './day/table/table-from-jobs.ts';
export type { Drawing } from './drawing/model.ts';
export { SCHEMA_KINDS, type SchemaKind } from './job/json-schema.ts';
export type { BuildOptions, Built } from './outputs/build.ts';
export type { Everything, JobDocument, Limits } from './outputs/everything.ts';
export type { Manifest } from './outputs/job-manifest.ts';
export type { Made } from './outputs/make.ts';
export { OPTIONS, type Option, type OptionName } from './outputs/option-table.ts';
export type { OutputOptions, PictureReader, Step, Surroundings } from './outputs/options.ts';
export type { Needs, Output, Work } from './outputs/output.ts';
export type { Prepared } from './outputs/prepare.ts';
export type { OutputId, Records } from './outputs/records.ts';
export type { Solved, SolveOptions, Source } from './outputs/solve-job.ts';
export { OUTPUTS } from './outputs/table.ts';
export type { PaperTaken, Taken } from './outputs/taken.ts';
export type { OutputFile } from './outputs/write.ts';
export type { PaperQuestion } from './papers/find.ts';
export type { FitPaper, NamedPaper, Paper, RollPaper, SheetPaper } from './papers/model.ts';
export { PAPERS } from './papers/table.ts';
export type { Clashing, Problem, Result } from './problems/problem.ts';
export { showProblem } from './problems/show.ts';
export type { Booked } from './stock/booking/book.ts';
export type { NewPlan, PlanNote, StockChange } from './stock/booking/plan-note.ts';
export type { BookedPlan } from './stock/booking/plans-file.ts';
export type {
  CutNode,
  LaidPiece,
  StockInput,
  StockOptions,
  StockPiece,
  StockPlan,
  StockSheet,
  UsedSheet,
} from './stock/planner/model.ts';
export type { CutSequence, Instruction } from './stock/planner/sequence.ts';
export type { Why } from './why.ts';
export { loadSvg } from './writers/svg/load.ts';
export { buildSvgIn, type SvgWindow } from './writers/svg/window.ts';

const solvingWrong = (jobText: string, options: SolveOptions) => [
  ...wrongArgument('jobText', jobText, 'text'),
  ...wrongOptions('options', options, KEYS.solving),
];

/** Reads and solves a job. */
export const solveJob = (jobText: string, options: SolveOptions = {}): Result<Solved> =>
  called(solvingWrong(jobText, options), () => solve(jobText, options));

/** As `solveJob`; the outlines of letters are loaded where the job turns out to have lettering. */
export const solveLoading = (jobText: string, options: SolveOptions = {}): Promise<Result<Solved>> =>
  calledLater(solvingWrong(jobText, options), () => solveWithFonts(jobText, options));

/** The documents of one job, by their names: files, and what was solved. */
export const build = (jobText: string, options: BuildOptions = {}): Promise<Result<Built>> =>
  calledLater([...wrongArgument('jobText', jobText, 'text'), ...wrongOptions('options', options, KEYS.building)], () =>
    buildJob(jobText, options),
  );

const makingWrong = (work: Work, options: OutputOptions, around: Surroundings) => [
  ...wrongOptions('work', work, KEYS.work, ['jobs']),
  ...wrongOptions('options', options, KEYS.making),
  ...wrongOptions('around', around, KEYS.around),
];

/** Any output of some solved jobs, written. */
export const make = <Id extends OutputId>(
  id: Id,
  work: Work,
  options: OutputOptions = {},
  around: Surroundings = {},
): Promise<Result<Made<Id>>> =>
  calledLater(makingWrong(work, options, around), () => makeOutput(id, work, options, around));

/** The same, drawn and laid on paper but not written: what it takes is known. */
export const prepare = <Id extends OutputId>(
  id: Id,
  work: Work,
  options: OutputOptions = {},
  around: Surroundings = {},
): Promise<Result<Prepared<Id>>> =>
  calledLater(makingWrong(work, options, around), () => prepareOutput(id, work, options, around));

/** The files of what was prepared. */
export const write = (prepared: Prepared, around: Surroundings = {}): Promise<Result<readonly OutputFile[]>> =>
  calledLater(
    [
      ...wrongArgument('prepared', prepared, 'something that prepare has made'),
      ...wrongOptions('around', around, KEYS.around),
    ],
    () => writeOutput(prepared, around),
  );

/** Every output of a job that it or its shop wants, with a manifest. */
export const everything = (
  job: Solved,
  index: number,
  options: OutputOptions = {},
  around: Surroundings = {},
  limits: Limits = {},
): Promise<Result<Everything>> =>
  calledLater(
    [
      ...wrongArgument('job', job, 'a solved job, as solveJob makes it'),
      ...wrongArgument('index', index, 'a number'),
      ...wrongOptions('options', options, KEYS.making),
      ...wrongOptions('around', around, KEYS.around),
      ...wrongOptions('limits', limits, KEYS.limits),
    ],
    () => everyOutput(job, index, options, around, limits),
  );

const FILE = 'a text and the name of its file: {text, file}';

/**
 * Rows of a table (commas, semicolons, or tabs as a spreadsheet hands them over) as jobs, each the text of a template with
 * other values. Errors: those of the table and of the template; a row that is wrong by itself is left out and told.
 */
export const jobsFromTable = (table: Source, template: Source): Promise<Result<TableJobs>> =>
  calledLater([...wrongArgument('table', table, FILE), ...wrongArgument('template', template, FILE)], async () =>
    (await import('./day/table/jobs-from-table.ts')).jobsFromTable(table, template),
  );

/** What is wrong with a job of a table, by row and column of the table; `own` is the file's name that it was solved by. */
export const atCells = async (
  job: TableJob,
  problems: readonly Problem[],
  own: string,
): Promise<Result<readonly Problem[]>> =>
  calledLater(
    [
      ...wrongArgument('job', job, 'a row that jobsFromTable has made'),
      ...wrongArgument('problems', problems, 'a list of problems'),
      ...wrongArgument('own', own, 'text'),
    ],
    async () => succeed((await import('./day/table/at-cells.ts')).atCells(job, problems, own)),
  );

/** What became of some jobs, as a list beside them says it. Errors: those of reading a text, `day-list`, `day-unreadable`. */
export const readDayList = (source: Source): Promise<Result<DayList>> =>
  calledLater(wrongArgument('source', source, FILE), async () =>
    (await import('./day/list/day-list.ts')).readDayList(source),
  );

/** The text of such a list with a mark set for some jobs, by the names of their files, or taken away where no day is given. */
export const markDayList = (
  text: string,
  files: readonly string[],
  mark: Mark,
  day: string | undefined,
): Promise<Result<string>> =>
  calledLater(
    [
      ...wrongArgument('text', text, 'text'),
      ...wrongArgument('files', files, 'a list of texts'),
      ...wrongWord('mark', mark, ['made', 'cut', 'shelved']),
      ...wrongArgument('day', day, 'text', true),
    ],
    async () => (await import('./day/list/day-list.ts')).markDayList(text, files, mark, day),
  );

/** Some jobs with what became of them, the first that is due first. */
export const dayRows = (jobs: readonly ListedJob[], list: DayList): Promise<Result<readonly DayRow[]>> =>
  calledLater(
    [
      ...wrongArgument('jobs', jobs, 'a list of jobs with files and titles'),
      ...wrongArgument('list', list, 'a list that readDayList has read'),
    ],
    async () => succeed((await import('./day/list/rows.ts')).dayRows(jobs, list)),
  );

/** Some jobs as a table over the first of them. Errors: those of reading them, `table-unlike`. */
export const tableFromJobs = (jobs: readonly Source[]): Promise<Result<WrittenTable>> =>
  calledLater(wrongArgument('jobs', jobs, 'a list of texts with the names of their files'), async () =>
    (await import('./day/table/table-from-jobs.ts')).tableFromJobs(jobs),
  );

/** The shop that a text describes. */
export const readShop = (source: Source): Result<Shop> =>
  called(wrongArgument('source', source, FILE), () => read(source));

/** The text of a job or a shop with one field set; all else stays as it was. */
export const setField = (text: string, path: EditPath, value: Plain): Result<string> =>
  called(wrongArgument('text', text, 'text'), () => set(text, path, value));

/** The text without a field. */
export const clearField = (text: string, path: EditPath): Result<string> =>
  called(wrongArgument('text', text, 'text'), () => clear(text, path));

/** What readings of a tool come to. */
export const calibrate = (request: CalibrationRequest): Result<Calibration> =>
  called(
    [
      ...wrongOptions('request', request, KEYS.calibrating, ['kind', 'text', 'file', 'date']),
      ...(request === undefined || request === null ? [] : wrongWord('request.kind', request.kind, CALIBRATED)),
    ],
    () => calibrateTool(request),
  );

/** Rectangles on the fewest sheets. */
export const planStock = (input: StockInput): Result<StockPlan> =>
  called(wrongArgument('input', input, 'an object'), () => plan(input));

/** The steps of cutting one sheet of a stock plan. */
export const cutSequence = (tree: CutNode): Result<CutSequence> =>
  called(wrongArgument('tree', tree, 'a plan of cuts, a node of a stock plan'), () => succeed(sequenceOf(tree)));

/** Settings at which the guide can stay while several jobs are cut. */
export const sharedSettings = (jobs: readonly (readonly Stroke[])[]): Result<readonly SharedSetting[]> =>
  called(wrongArgument('jobs', jobs, 'a list of strokes for each job'), () => succeed(settingsOf(jobs)));

/**
 * Everything that is done at the bench, step by step: of one job worked alone, or of several as one day. `waits` names
 * blanks that come out of fallouts of the same day.
 */
export const orderOfWork = (jobs: readonly Solved[], waits: readonly Wait[] = []): Result<OrderOfWork> =>
  called(wrongArgument('jobs', jobs, 'a list of solved jobs, as solveJob makes them'), () =>
    succeed(workOf(jobs, waits)),
  );

/** Why every size of a solved job is what it is. */
export const reasons = (job: Pick<Solved, 'job' | 'written'>): Result<readonly Why[]> =>
  called(wrongArgument('job', job, 'a job that was read'), () => succeed(reasonsOf(job)));

/** The piece as it will hang, seen from the face at its own size in mm, frame included, without its pictures. */
export const face = (job: Pick<Solved, 'job' | 'mat'>): Promise<Result<Drawing>> =>
  calledLater(wrongArgument('job', job, 'a job that was solved'), async () => succeed(await drawFace(job)));

/** The same as the text of an SVG. Errors: `svg-window`, where there is no document to build it in. */
export const faceSvg = (job: Pick<Solved, 'job' | 'mat'>): Promise<Result<string>> =>
  calledLater(wrongArgument('job', job, 'a job that was solved'), () => writeFace(job));

/**
 * The paper that a text means: one of `PAPERS`, `300 x 450 mm`, `roll:36in` or `fit`. Errors: `paper-unknown`,
 * `paper-ambiguous`, `paper-unit`, `paper-size`, `paper-small`, `paper-large`.
 */
export const findPaper = (text: string, question: PaperQuestion = {}): Result<Paper> =>
  called([...wrongArgument('text', text, 'text'), ...wrongOptions('question', question, KEYS.paper)], () =>
    find(text, question),
  );

/** The JSON Schema (draft 2020-12) of jobs or of shops, for editors and forms. */
export const jsonSchema = (kind: SchemaKind): Result<Readonly<Record<string, unknown>>> =>
  called(wrongWord('kind', kind, SCHEMA_KINDS), () => succeed(schemaOf(kind)));
