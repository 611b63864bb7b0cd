import { useEffect } from 'preact/hooks';
import { filesNamed, readPlan } from '../../plan/index.ts';
import { keepFile, openPlan, readAgain } from '../state/actions.ts';
import { mastersFolder } from '../state/disk.ts';
import { addMasters } from '../state/drag.ts';
import { given } from '../state/given.ts';
import { fault, plan } from '../state/store.ts';

const isPlan = (name: string): boolean => /\.(ya?ml|json)$/i.test(name);
const isUseful = (name: string): boolean => /\.(stl|obj|3mf|svg|dxf)$/i.test(name);

/**
 * Takes files a person dropped or chose. A plan among them is opened; meshes and outlines that it names are kept for
 * it. Those that the open plan does not name are added to it as masters.
 */
async function openFiles(files: readonly File[]): Promise<void> {
  const stranger = files.find(({ name }) => !isPlan(name) && !isUseful(name));
  if (stranger) {
    fault.value = `${stranger.name} is no plan (YAML), mesh (STL, OBJ, 3MF) or outline (SVG, DXF).`;
  }
  const useful = files.filter(({ name }) => isUseful(name));
  for (const file of useful) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    keepFile(file.name, bytes);
    given.set(file.name, bytes);
  }
  const opened = files.find(({ name }) => isPlan(name));
  if (opened) openPlan({ name: opened.name, text: await opened.text(), origin: 'dropped' });
  else if (!plan.peek()) {
    if (!stranger) fault.value = 'Drop a plan with the meshes, or start with a disc and add them.';
  } else if (useful.length > 0) addNew(useful.map(({ name }) => name));
}

/** Those of the files that the open plan does not name become masters of it; the others are what it waited for. */
function addNew(names: readonly string[]): void {
  const open = plan.peek();
  if (!open) return;
  const named = filesNamed(readPlan(open.text, open.name).plan);
  const known = new Set(named.map((path) => path.split(/[/\\]/).at(-1)));
  const fresh = names.filter((name) => !known.has(name));
  if (fresh.length === 0) readAgain();
  else addMasters(open.origin === 'server' ? fresh.map((name) => `${mastersFolder}/${name}`) : fresh);
}

/** A button that opens files, for those who cannot drop them. */
export function OpenFiles({ label = 'Open files' }: { readonly label?: string }) {
  return (
    <label class="open-files">
      {label}
      <input
        type="file"
        multiple
        accept=".yaml,.yml,.json,.stl,.obj,.3mf,.svg,.dxf"
        onChange={({ currentTarget }) => {
          void openFiles([...(currentTarget.files ?? [])]);
          currentTarget.value = '';
        }}
      />
    </label>
  );
}

/** Files may be dropped anywhere on the page. */
export function useDrop(): void {
  useEffect(() => {
    const over = (event: DragEvent) => event.preventDefault();
    const drop = (event: DragEvent) => {
      event.preventDefault();
      void openFiles([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener('dragover', over);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('drop', drop);
    };
  }, []);
}
