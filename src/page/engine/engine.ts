/** The small worker: what a text comes to, at every key. */
import { jsonSchema } from '../../job/json-schema.ts';
import { answerWith } from './answering.ts';
import { lookAt, restOf } from './look.ts';
import { shopProblems } from './shop-problems.ts';

answerWith({
  look: (request) => lookAt(request),
  rest: (request) => restOf(request),
  shop: shopProblems,
  shapes: async () => ({ job: jsonSchema('job'), shop: jsonSchema('shop') }),
});
