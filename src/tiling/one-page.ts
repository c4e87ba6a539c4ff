import type { Drawing } from '../drawing/model.ts';
import type { FitPaper, RollPaper } from '../papers/model.ts';
import { fail, type Result } from '../problems/problem.ts';
import type { Page } from './model.ts';
import type { LayoutOptions } from './options.ts';

export function onePage(
  drawing: Drawing,
  paper: RollPaper | FitPaper,
  options: LayoutOptions,
): Result<{ readonly page: Page; readonly crowded: readonly string[]; readonly summary: string }> {
  void drawing;
  void paper;
  void options;
  return fail([]);
}
