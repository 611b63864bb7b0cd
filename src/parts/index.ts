import type { Part } from '../mold/index.ts';
import { discBlank } from './disc-blank.ts';
import { plug } from './plug.ts';
import { sprueForm } from './sprue-form.ts';

/** Every kind of solid the user can ask for. A new kind is one file and one line here. */
export const parts: readonly Part[] = [discBlank, sprueForm, plug];
