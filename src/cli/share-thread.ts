/** A thread beside the program: it does the shares of a run that it is given, until it is ended. */
import { parentPort } from 'node:worker_threads';
import * as Comlink from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter';
import { sharedWork } from '#run/share/shared-work.ts';

if (parentPort !== null) Comlink.expose(sharedWork, nodeEndpoint(parentPort));
