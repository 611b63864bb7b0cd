import { panels } from '../panels/index.ts';
import { mold, plan, unread } from '../state/store.ts';
import { openPanel } from '../state/view.ts';
import { Conflict } from './conflict.tsx';
import { FirstLook } from './first-look.tsx';
import { Header } from './header.tsx';
import { useKeys } from './keys.ts';
import { useDrop } from './open-files.tsx';
import { Picture } from './picture.tsx';
import { isOpening } from './server-plan.ts';
import { ShowBar } from './show-bar.tsx';
import { Unread } from './unread.tsx';

export function App() {
  useDrop();
  useKeys();
  if (!plan.value) return isOpening.value ? <main class="first-look" aria-busy="true" /> : <FirstLook />;
  return (
    <div class="bench">
      <Header />
      <Steps />
      <OpenPanel />
      <main class="view" aria-label="The mold">
        <Picture />
        <ShowBar />
      </main>
      <Conflict />
    </div>
  );
}

/** The steps of the work at the bench, in their order; each opens its sheet. */
function Steps() {
  return (
    <nav class="steps" aria-label="Bench steps">
      {panels.map(({ id, title }, index) => (
        <button
          key={id}
          type="button"
          class="step"
          aria-current={openPanel.value === id ? 'step' : undefined}
          onClick={() => {
            openPanel.value = id;
          }}
        >
          <span class="step-number" aria-hidden="true">
            {index + 1}
          </span>
          {title}
        </button>
      ))}
    </nav>
  );
}

function OpenPanel() {
  const panel = panels.find(({ id }) => id === openPanel.value) ?? panels[0];
  return (
    // Scrolls: so it has to be reachable by keyboard.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region
    <section class="sheet" aria-label={panel.title} tabIndex={0}>
      <h2>{panel.title}</h2>
      <p class="hint">{panel.hint}</p>
      {panel.id !== 'findings' && <Unread />}
      {(mold.value || unread.value.length === 0 || panel.id === 'findings') && <panel.View />}
    </section>
  );
}
