import type { FunctionComponent } from 'preact';

/** The sheet of one bench step. */
export interface Panel {
  readonly id: string;
  /** As people at the bench call the step. */
  readonly title: string;
  /** One sentence: what is seen and done here. */
  readonly hint: string;
  readonly View: FunctionComponent;
}
