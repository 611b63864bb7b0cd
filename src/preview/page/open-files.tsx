import { useEffect } from 'preact/hooks';
import { keepFile, openPlan } from '../state/actions.ts';
import { fault, plan } from '../state/store.ts';

const isPlan = (name: string): boolean => /\.(ya?ml|json)$/i.test(name);
const isUseful = (name: string): boolean => /\.(stl|obj|3mf|svg|dxf)$/i.test(name);

/** Takes files a person dropped or chose: meshes and outlines are kept by name, a plan among them is opened. */
export async function takeFiles(files: readonly File[]): Promise<void> {
  const stranger = files.find(({ name }) => !isPlan(name) && !isUseful(name));
  if (stranger) {
    fault.value = `${stranger.name} is no plan (YAML), mesh (STL, OBJ, 3MF) or outline (SVG, DXF).`;
  }
  for (const file of files.filter(({ name }) => isUseful(name))) {
    keepFile(file.name, new Uint8Array(await file.arrayBuffer()));
  }
  const opened = files.find(({ name }) => isPlan(name));
  if (opened) openPlan({ name: opened.name, text: await opened.text(), origin: 'dropped' });
  else if (!plan.peek() && !stranger)
    fault.value = 'Drop a plan with the meshes, or start with a disc and add them.';
}

/** A button that opens files, for those who cannot drop them. */
export function OpenFiles() {
  return (
    <label class="open-files">
      Open files
      <input
        type="file"
        multiple
        accept=".yaml,.yml,.json,.stl,.obj,.3mf,.svg,.dxf"
        onChange={({ currentTarget }) => {
          void takeFiles([...(currentTarget.files ?? [])]);
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
      void takeFiles([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener('dragover', over);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', over);
      removeEventListener('drop', drop);
    };
  }, []);
}
