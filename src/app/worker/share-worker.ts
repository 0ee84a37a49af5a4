/** A worker beside the planning one: it does the shares of a run that it is given. */
import * as Comlink from 'comlink';
import { sharedWork } from '#run/share/shared-work.ts';

Comlink.expose(sharedWork);
