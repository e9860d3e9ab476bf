/**
 * What Match loads to judge a cup: see `match/solver.ts`.
 *
 * @packageDocumentation
 */
import { adviceFor, firstAnswers } from './match/ask.ts';
import { aloneNow, lookNow, roundsSeen } from './match/cup-looks.ts';
import { SOLVER_AS, type Solver } from './match/solver.ts';
import { taughtData } from './match/taught-data.ts';

const solver: Solver = { adviceFor, firstAnswers, aloneNow, lookNow, roundsSeen, taughtData };
(window as { [SOLVER_AS]?: Solver })[SOLVER_AS] = solver;
