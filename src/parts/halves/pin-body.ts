import { segmentsFor } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import { type Disc, overlap, pinSpan, type VentPin } from '../../mold/index.ts';

/** Cutter of a vent pin's hole, `wider` mm across: from past the outer face into the cavity. */
export function pinBody(
  scope: Scope,
  pin: VentPin,
  disc: Pick<Disc, 'lower' | 'upper'>,
  { chordError, wider }: { readonly chordError: number; readonly wider: number },
): Body {
  const radius = (pin.diameter + wider) / 2;
  const sides = segmentsFor(radius, chordError);
  const round = Array.from({ length: sides }, (_, k) => {
    const angle = (2 * Math.PI * k) / sides;
    return [pin.x + radius * Math.cos(angle), pin.y + radius * Math.sin(angle)] as const;
  });
  const [low, high] = pinSpan(pin, disc);
  return pin.half === 'upper'
    ? scope.extrude([round], low, high + overlap, pin.id)
    : scope.extrude([round], low - overlap, high, pin.id);
}
