export { plug } from './plug.ts';
export { formWords, sprueForm } from './sprue-form.ts';
export { sprueOpening } from './sprue-form-body.ts';
