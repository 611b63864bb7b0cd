import { isNear, pointing } from '../../state/pointing.ts';
import { coversOf, leastCover, nextStock, type Reaching } from '../../state/reaching.ts';
import { length, tick } from '../../state/show.ts';
import { picked, pointedAt } from '../../state/store.ts';
import type { ShownMold } from '../../worker/messages.ts';

interface HeightBarsProps {
  readonly mold: ShownMold;
  readonly things: readonly Reaching[];
}

/** The drawing's own units: px of a sheet 316 wide. */
const wide = 316;
const left = 42;
const tall = 230;

/** Every height to one scale, a bar for each thing that stands into the halves, with the cover left over and under it. */
export function HeightBars({ mold: { disc, limits }, things }: HeightBarsProps) {
  const stock = { upper: nextStock('upper')?.thickness, lower: nextStock('lower')?.thickness };
  const top = Math.max(disc.upper, stock.upper ?? 0, ...things.map(({ highest }) => highest));
  const foot = Math.max(disc.lower, stock.lower ?? 0, ...things.map(({ lowest }) => -lowest));
  const scale = tall / (top + foot);
  const y = (z: number): number => 8 + (top - z) * scale;
  const step = (wide - left - 4) / Math.max(1, things.length);
  return (
    <figure class="drawing">
      <div
        role="listbox"
        tabIndex={0}
        aria-label="Depth below and height above the parting plane of everything in the halves; arrow keys go from one to the next"
        aria-activedescendant={pointedAt.value === undefined ? undefined : barId(pointedAt.value)}
        onKeyDown={(event) => walk(event, things)}
        onBlur={() => {
          pointedAt.value = undefined;
        }}
      >
        <svg viewBox={`0 0 ${wide} ${tall + 16}`} role="none">
          <g>
            <rect class="half" x={left} y={y(disc.upper)} width={wide - left} height={disc.upper * scale} />
            <rect class="half" x={left} y={y(0)} width={wide - left} height={disc.lower * scale} />
          </g>
          {things.map((one, i) => (
            <Bar
              key={one.id}
              one={one}
              x={left + 2 + i * step}
              width={step}
              y={y}
              disc={disc}
              limit={limits.cover}
            />
          ))}
          <g>
            <Level y={y(0)} class="plane" says="0" />
            <Level y={y(disc.upper)} class="face" says={tick(disc.upper)} />
            <Level y={y(-disc.lower)} class="face" says={tick(-disc.lower)} />
            <Level y={y(disc.upper - limits.cover)} class="limit" says={tick(disc.upper - limits.cover)} />
            <Level y={y(limits.cover - disc.lower)} class="limit" says={tick(limits.cover - disc.lower)} />
            <Ghost at={stock.upper} now={disc.upper} y={y} sign={1} />
            <Ghost at={stock.lower} now={disc.lower} y={y} sign={-1} />
          </g>
        </svg>
      </div>
      <figcaption>
        Heights to one scale. Dashed: from here on less than the cover of {length(limits.cover)} is left.{' '}
        <Told things={things} />
      </figcaption>
    </figure>
  );
}

const barId = (id: string): string => `bar-${id.replaceAll(/[^\w-]/g, '_')}`;

/** What is pointed at, in words; also for those who do not see the bars. */
function Told({ things }: { readonly things: readonly Reaching[] }) {
  const one = things.find(({ id }) => id === (pointedAt.value ?? picked.value));
  return (
    <span class="told" aria-live="polite">
      {one ? say(one) : ''}
    </span>
  );
}

function say(one: Reaching): string {
  const { id, lowest, highest } = one;
  const cover = leastCover(one);
  const reach = `${id}: ${length(Math.max(0, -lowest))} below the parting plane, ${length(Math.max(0, highest))} above it`;
  return cover === undefined ? reach : `${reach}, ${length(cover)} of cover left`;
}

function walk(event: KeyboardEvent, things: readonly Reaching[]): void {
  const ways: Record<string, number> = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 };
  const way = ways[event.key];
  if (things.length === 0) return;
  if (event.key === 'Enter') picked.value = pointedAt.value;
  if (way === undefined) return;
  event.preventDefault();
  const now = things.findIndex(({ id }) => id === pointedAt.value);
  pointedAt.value = things[now < 0 ? 0 : (now + way + things.length) % things.length].id;
}

interface BarProps {
  readonly one: Reaching;
  readonly x: number;
  readonly width: number;
  readonly y: (z: number) => number;
  readonly disc: ShownMold['disc'];
  readonly limit: number;
}

function Bar({ one, x, width, y, disc, limit }: BarProps) {
  const { id, kind, lowest, highest } = one;
  const near = isNear(id);
  const isThin = coversOf(one).some((cover) => cover < limit);
  const middle = x + width / 2;
  const [barLeft, barWidth] = [x + width * 0.14, width * 0.72];
  return (
    <g
      id={barId(id)}
      role="option"
      aria-selected={near}
      aria-label={say(one)}
      class={`bar ${near ? 'is-near' : ''}`}
      {...pointing(id)}
      onClick={() => {
        picked.value = id;
      }}
    >
      <rect class="catch" x={x} y={y(disc.upper)} width={width} height={y(-disc.lower) - y(disc.upper)} />
      {highest > 0 && <line class="cover" x1={middle} y1={y(disc.upper)} x2={middle} y2={y(highest)} />}
      {lowest < 0 && <line class="cover" x1={middle} y1={y(lowest)} x2={middle} y2={y(-disc.lower)} />}
      <rect
        class={`reach is-${kind.replace(' ', '-')} ${isThin ? 'is-thin' : ''} ${near ? 'is-near' : ''}`}
        x={barLeft}
        y={y(highest)}
        width={barWidth}
        height={y(lowest) - y(highest)}
      />
    </g>
  );
}

function Level({
  y,
  class: className,
  says,
}: {
  readonly y: number;
  readonly class: string;
  readonly says: string;
}) {
  return (
    <>
      <line class={className} x1={left} y1={y} x2={wide} y2={y} />
      <text class="tick" x={left - 4} y={y + 3} text-anchor="end">
        {says}
      </text>
    </>
  );
}

interface GhostProps {
  readonly at: number | undefined;
  readonly now: number;
  readonly y: (z: number) => number;
  readonly sign: 1 | -1;
}

/** Where the outer face of the next stock would be. */
function Ghost({ at, now, y, sign }: GhostProps) {
  if (at === undefined || Math.abs(at - now) < 1e-6) return null;
  const level = y(sign * at);
  return (
    <>
      <line class="ghost" x1={left} y1={level} x2={wide} y2={level} />
      <text
        class="tick is-over"
        x={wide - 2}
        y={level + (level < 14 ? 19 : sign < 0 ? 11 : -3)}
        text-anchor="end"
      >
        next stock {length(at)}
      </text>
    </>
  );
}
