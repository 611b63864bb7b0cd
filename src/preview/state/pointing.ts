import { picked, pointedAt } from './store.ts';

/** For what stands for a thing in a row or a drawing: the pointer over it points at the thing. */
export const pointing = (id: string | undefined) => ({
  onPointerEnter: () => {
    pointedAt.value = id;
  },
  onPointerLeave: () => {
    pointedAt.value = undefined;
  },
});

/** Whether a thing is pointed at or picked: then it stands out wherever it is shown. */
export const isNear = (id: string): boolean => pointedAt.value === id || picked.value === id;
