import type { ComponentChildren } from 'preact';
import { picked } from '../state/store.ts';

/** Chooses what it names; on focus already where Tab goes through a list of them. */
export function PickButton({
  id,
  isChosenByFocus = false,
  children = id,
}: {
  readonly id: string;
  readonly isChosenByFocus?: boolean;
  readonly children?: ComponentChildren;
}) {
  const pick = (): void => {
    picked.value = id;
  };
  return (
    <button
      type="button"
      class="plain"
      aria-pressed={picked.value === id}
      onFocus={isChosenByFocus ? pick : undefined}
      onClick={pick}
    >
      {children}
    </button>
  );
}
