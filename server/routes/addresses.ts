import { Router } from 'express';
import * as v from 'valibot';
import type { ClassRegistry } from '../live/registry.ts';
import type { Store } from '../store/store.ts';
import { needTeacher, readBody, refuse } from './guard.ts';

const chosenSchema = v.strictObject({ chosen: v.pipe(v.string(), v.maxLength(300)) });

/** Under which address students reach the server; the one chosen goes into links and QR. */
export interface Addresses {
  readonly all: () => readonly string[];
  readonly chosen: () => string;
  readonly choose: (address: string) => Promise<void>;
}

export function addressRoutes(store: Store, registry: ClassRegistry, addresses: Addresses): Router {
  const router = Router();

  router.get('/addresses', async (request, response) => {
    if (!(await needTeacher(store, request, response))) return;
    response.json({ addresses: addresses.all(), chosen: addresses.chosen() });
  });

  router.put('/addresses', async (request, response) => {
    const teacher = await needTeacher(store, request, response);
    const body = teacher && readBody(chosenSchema, request, response);
    if (!body) return;
    if (!addresses.all().includes(body.chosen)) return refuse(response, 'not-found');
    await addresses.choose(body.chosen);
    await registry.redraw();
    response.json({});
  });

  return router;
}
