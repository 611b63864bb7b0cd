import { useState } from 'preact/hooks';
import { mmPerInch } from '../../geometry/index.ts';
import { starterPlan } from '../../plan/index.ts';
import { keepFile, openPlan } from '../state/actions.ts';
import { fault } from '../state/store.ts';
import { units } from '../state/view.ts';
import { Choice } from './choice.tsx';
import { OpenFiles } from './open-files.tsx';
import { offers, type Preset } from './presets.ts';

const sizes = { mm: [150, 200, 230, 250, 300], in: [6, 8, 9, 10, 12] } as const;
const processes = [
  { id: 'rubber', title: 'Rubber, cured in a can' },
  { id: 'rigid', title: 'Printed or machined halves' },
  { id: 'poured', title: 'Pattern plates for silicone' },
] as const;

function open(preset: Preset): void {
  for (const [name, text] of preset.files) keepFile(name, new TextEncoder().encode(text));
  openPlan(preset.plan());
}

/** Opened with no plan: a disc to start from, without a word of file format. */
export function FirstLook() {
  return (
    <main class="first-look">
      <h1>discwright</h1>
      <p class="lead">
        Choose a disc. You get a center sprue form, plug, bosses, tab and blank halves at once; masters can
        come later.
      </p>
      <NewDisc />
      <h2>Or bring your own</h2>
      <p>
        Drop a plan and its meshes anywhere on this page, or <OpenFiles />
      </p>
      {fault.value && (
        <p class="fault" role="alert">
          {fault.value}
        </p>
      )}
      <h2>Or look at a finished one</h2>
      <Offers />
      <p class="caution">
        Molten metal, spinning discs and hot presses hurt people. What is computed here are shapes and
        distances; local codes, the makers of your machine, rubber and alloy, and licensed practice come
        first.
      </p>
    </main>
  );
}

function NewDisc() {
  const unit = units.value;
  const [size, setSize] = useState(3);
  const [process, setProcess] = useState<(typeof processes)[number]['id']>('rubber');
  const diameter = sizes[unit][size];
  const start = () =>
    openPlan({
      name: 'new-disc.yaml',
      text: starterPlan({ diameter: unit === 'in' ? diameter * mmPerInch : diameter, process, unit }),
      origin: 'preset',
    });
  return (
    <section aria-label="A new disc" class="card new-disc">
      <Choice label="Lengths" value={units} options={['mm', 'in']} />
      <fieldset class="choice sizes">
        <legend>Disc across</legend>
        {sizes[unit].map((one, index) => (
          <button key={one} type="button" aria-pressed={index === size} onClick={() => setSize(index)}>
            {one} {unit}
          </button>
        ))}
      </fieldset>
      <fieldset class="choice">
        <legend>The halves will be</legend>
        {processes.map(({ id, title }) => (
          <button key={id} type="button" aria-pressed={id === process} onClick={() => setProcess(id)}>
            {title}
          </button>
        ))}
      </fieldset>
      <button type="button" class="main" onClick={start}>
        Start with this disc
      </button>
    </section>
  );
}

function Offers() {
  const { presets, notCarried } = offers.value;
  return (
    <>
      <ul class="cards">
        {presets.map((preset) => (
          <li key={preset.id}>
            <button type="button" class="card" onClick={() => open(preset)}>
              <img src={preset.picture} alt="" width={370} height={190} />
              <strong>{preset.title}</strong>
              <span>{preset.says}</span>
            </button>
          </li>
        ))}
      </ul>
      {notCarried.length > 0 && (
        <p class="hint">
          Not in this one file, because of their meshes: {notCarried.join(', ')}. They come with the program,
          in its folder presets; drop a plan from there with its masters.
        </p>
      )}
    </>
  );
}
