/** Called before each step with what is about to be done; may throw to cancel. */
export type Progress = (step: {
  readonly title: string;
  readonly done: number;
  readonly total: number;
}) => void;
