/** The small worker: what a text comes to, at every key. */
import { answerWith } from './answering.ts';
import { lookAt, restOf } from './look.ts';
import { shopProblems } from './shop-problems.ts';

answerWith({ look: (request) => lookAt(request), rest: (request) => restOf(request), shop: shopProblems });
