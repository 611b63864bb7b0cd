import { batch } from '@preact/signals';
import type { FromWorker, ShownMesh } from '../worker/messages.ts';
import { isProposing, letGo, receiveProposed, receiveTried, tried } from './channel-state.ts';
import { downloadFile } from './download.ts';
import { dragState, isDragging } from './drag-state.ts';
import { receiveNear } from './near.ts';
import * as store from './store.ts';
import { hideForFirstLook, planSystem } from './view.ts';

/** The newest picture of each master. They come one by one; shown, and so drawn, they are when there is a place for all. */
const arrived = new Map<string, { readonly edit: number; readonly mesh: ShownMesh }>();

function showArrived(): void {
  const shown = store.masterMeshes.peek();
  if ([...arrived].every(([id, { mesh }]) => shown.get(id) === mesh)) return;
  store.masterMeshes.value = new Map([...arrived].map(([id, { mesh }]) => [id, mesh]));
}

/** Puts what is received from a worker into the store. */
export function receive(message: FromWorker): void {
  batch(() => put(message));
}

function put(message: FromWorker): void {
  switch (message.kind) {
    case 'step':
      store.step.value = message;
      break;
    case 'master': {
      const { id, mesh } = message.master;
      // Of two workers the one with the older may be the later.
      if ((arrived.get(id)?.edit ?? 0) <= message.edit) arrived.set(id, { edit: message.edit, mesh });
      break;
    }
    case 'laid':
      showLaid(message);
      break;
    case 'channels':
      store.channels.value = message.channels;
      break;
    case 'near':
      receiveNear(message);
      break;
    case 'solids':
      // Quick ones do not take the place of a whole set that is merely a little old.
      if (message.complete || store.solids.peek().length === 0) store.solids.value = message.solids;
      store.solidsAreCurrent.value = message.complete;
      break;
    case 'report':
      store.report.value = message.report;
      store.reportIsCurrent.value = true;
      break;
    case 'built':
      showBuilt(message);
      break;
    case 'unread':
      store.unread.value = message.findings;
      planSystem.value = message.units;
      dragState.value = undefined;
      letGo();
      store.step.value = undefined;
      break;
    case 'files':
      downloadFile(message.bytes, message.name);
      store.step.value = undefined;
      break;
    case 'walls':
      store.walls.value = message.walls;
      store.step.value = undefined;
      performance.mark('walls shown');
      break;
    case 'tried':
      receiveTried(message);
      break;
    case 'proposed':
      store.step.value = undefined;
      receiveProposed(message);
      break;
    case 'filling':
      tried.value = undefined;
      store.filling.value = message.cavities;
      store.fillingIsCurrent.value = true;
      store.step.value = undefined;
      performance.mark('filling shown');
      break;
    case 'told':
      store.forecasts.value = message.forecasts;
      store.step.value = undefined;
      performance.mark('forecast told');
      break;
    case 'fault':
      isProposing.value = false;
      store.fault.value = message.says;
      store.step.value = undefined;
      break;
    case 'left':
      break;
  }
}

type Of<Kind extends FromWorker['kind']> = Extract<FromWorker, { readonly kind: Kind }>;

function showLaid({ mold, complete }: Of<'laid'>): void {
  store.unread.value = [];
  planSystem.value = mold.units;
  if (!store.mold.peek()) hideForFirstLook(mold.process);
  store.mold.value = mold;
  if (complete) showArrived();
  // What was let go lies there now; what was picked up meanwhile is still dragged.
  if (!isDragging.peek()) dragState.value = undefined;
  if (complete) letGo();
  performance.mark(complete ? 'mold laid' : 'disc laid');
}

function showBuilt({ report, withheld, stls, drawings }: Of<'built'>): void {
  store.report.value = { ...report, fields: store.report.peek()?.fields ?? [] };
  store.withheld.value = withheld;
  store.stls.value = stls;
  store.drawings.value = drawings;
  store.step.value = undefined;
  performance.mark('mold built');
}
