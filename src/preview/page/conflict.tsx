import { useEffect, useRef } from 'preact/hooks';
import { changedLines } from '../../plan/index.ts';
import { acceptBoth, acceptTheirs, conflict, decideLater, keepMine, mergedPlan } from '../state/disk.ts';
import { plan } from '../state/store.ts';

/** Asked when the file changed on disk under changes made here: shows both, and loses neither without being told to. */
export function Conflict() {
  const dialog = useRef<HTMLDialogElement>(null);
  const now = conflict.value;
  const open = plan.value;
  const isOpen = now !== undefined && open !== undefined;
  useEffect(() => {
    if (isOpen && !dialog.current?.open) dialog.current?.showModal();
  }, [isOpen]);
  if (!now || !open) return null;
  const both = mergedPlan();
  return (
    <dialog ref={dialog} class="conflict" aria-labelledby="conflict-title" onCancel={decideLater}>
      <h2 id="conflict-title">The plan changed on disk while you changed it here</h2>
      <div class="texts">
        <Text title="Yours, as changed here" text={open.text} base={open.kept} />
        <Text title={`On disk, ${now.name}`} text={now.text} base={open.kept} />
      </div>
      <p>
        {both === undefined
          ? 'Both changed the same lines, so they cannot be put together by themselves.'
          : 'The changes are in different lines: they can be put together. Nothing is saved yet then.'}
      </p>
      <div class="answers">
        <button type="button" class="main" disabled={both === undefined} onClick={acceptBoth}>
          Put both together
        </button>
        <button type="button" onClick={() => void keepMine()}>
          Save mine over it
        </button>
        <button type="button" onClick={acceptTheirs}>
          Take the one on disk
        </button>
        <button type="button" onClick={decideLater}>
          Decide later
        </button>
      </div>
    </dialog>
  );
}

function Text({
  title,
  text,
  base,
}: {
  readonly title: string;
  readonly text: string;
  readonly base: string;
}) {
  const changed = changedLines(base, text);
  const shown = useRef<HTMLPreElement>(null);
  useEffect(() => {
    const first = shown.current?.querySelector('mark');
    if (first && shown.current) shown.current.scrollTop = first.offsetTop - shown.current.clientHeight / 2;
  }, []);
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region */}
      <pre ref={shown} tabIndex={0}>
        {text
          .split('\n')
          .map((line, index) =>
            changed.has(index) ? <mark key={`${index} ${line}`}>{`${line}\n`}</mark> : `${line}\n`,
          )}
      </pre>
    </section>
  );
}
