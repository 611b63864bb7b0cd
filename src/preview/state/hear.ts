import { batch } from '@preact/signals';
import type { FromWorker } from '../worker/messages.ts';
import { hold, inHand } from './held.ts';
import { hearNear } from './near.ts';
import * as store from './store.ts';
import { takeAway } from './take.ts';
import { hideForFirstLook } from './view.ts';

/** Puts what a worker says into the store. */
export function hear(message: FromWorker): void {
  batch(() => put(message));
}

function put(message: FromWorker): void {
  switch (message.kind) {
    case 'step':
      store.step.value = message;
      break;
    case 'master': {
      const { id, mesh } = message.master;
      store.masterMeshes.value = new Map(store.masterMeshes.peek()).set(id, mesh);
      break;
    }
    case 'laid':
      store.unread.value = [];
      if (!store.mold.peek()) hideForFirstLook(message.mold.process);
      store.mold.value = message.mold;
      // What was let go lies there now; what was taken meanwhile stays in the hand.
      if (!inHand.peek()) hold.value = undefined;
      performance.mark(message.complete ? 'mold laid' : 'disc laid');
      break;
    case 'channels':
      store.channels.value = message.channels;
      break;
    case 'near':
      hearNear(message);
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
      store.report.value = { ...message.report, fields: store.report.peek()?.fields ?? [] };
      store.withheld.value = message.withheld;
      store.stls.value = message.stls;
      store.drawings.value = message.drawings;
      store.step.value = undefined;
      performance.mark('mold built');
      break;
    case 'unread':
      store.unread.value = message.findings;
      hold.value = undefined;
      store.step.value = undefined;
      break;
    case 'taken':
      takeAway(message.bytes, message.name);
      store.step.value = undefined;
      break;
    case 'walls':
      store.walls.value = message.walls;
      store.step.value = undefined;
      performance.mark('walls shown');
      break;
    case 'fault':
      store.fault.value = message.says;
      store.step.value = undefined;
      break;
    case 'left':
      break;
  }
}
