import { Router } from 'express';
import type { RateLimiterMemory } from 'rate-limiter-flexible';
import * as v from 'valibot';
import type { ClassSettings } from '../../shared/protocol/commands.ts';
import type { ClassId, PlanId, Time } from '../../shared/protocol/ids.ts';
import { idSchema, textSchema } from '../../shared/protocol/schemas.ts';
import { joinClass } from '../live/joining.ts';
import type { ClassRegistry } from '../live/registry.ts';
import { hashToken, newClassCode, newId, newToken, readClassCode } from '../secrets.ts';
import type { ClassSummary, Store } from '../store/store.ts';
import { countFailure, needGroup, readBody, readCookie, refuse, takeTry } from './guard.ts';

const openSchema = v.strictObject({ planId: v.nullable(idSchema<PlanId>()) });
const joinSchema = v.strictObject({ code: v.pipe(v.string(), v.maxLength(40)), name: textSchema(40) });

/** Only to know a device again that was sent away: what opens its seat is the token in the reply. */
const seatCookie = 'rootcall-stand';

export interface ClassRouteOptions {
  readonly secure: boolean;
  /** Wrong codes, by address. */
  readonly failures: RateLimiterMemory;
}

/** Opening a class, and coming in. */
export function classRoutes(
  store: Store,
  registry: ClassRegistry,
  { secure, failures }: ClassRouteOptions,
): Router {
  const router = Router();

  router.post('/groups/:id/classes', async (request, response) => {
    const group = await needGroup(store, request, response, request.params.id);
    const body = group && readBody(openSchema, request, response);
    if (!body) return;
    const classes = await store.classes.ofGroup(group.id);
    const open = classes.find(({ closedAt }) => closedAt === null);
    if (open) return void response.json({ id: open.id });
    const plan = body.planId ? await store.plans.byId(body.planId) : undefined;
    if (body.planId && plan?.groupId !== group.id) return refuse(response, 'not-found');
    const id = newId() as ClassId;
    const openedAt = Date.now() as Time;
    const settings = {
      ...({ autoAdmit: false, score: 'class', ranking: false } as const),
      ...(await playingLastTime(classes)),
    };
    const copy = plan ? { id: plan.id, title: plan.title, exercises: plan.exercises } : null;
    let made: 'created' | 'code-taken';
    do {
      made = await store.classes.create({
        id,
        groupId: group.id,
        code: newClassCode(),
        openedAt,
        settings,
        plan: copy,
      });
    } while (made === 'code-taken');
    response.json({ id });
  });

  /** How playing went in the group's latest class; one typed in from paper was over when it was made. */
  async function playingLastTime(classes: readonly ClassSummary[]): Promise<Pick<ClassSettings, 'playing'>> {
    const last = classes.find(({ openedAt, closedAt }) => closedAt !== openedAt);
    const playing = last && (await store.classes.load(last.id))?.settings.playing;
    return playing === undefined ? {} : { playing };
  }

  router.post('/join', async (request, response) => {
    const body = readBody(joinSchema, request, response);
    if (!body || !(await takeTry(failures, request, response))) return;
    const code = readClassCode(body.code);
    const token = newToken();
    const before = readCookie(request, seatCookie);
    const now = Date.now() as Time;
    const joined = code
      ? await joinClass(store.classes, registry, newId, {
          code,
          name: body.name,
          tokenHash: hashToken(token),
          tokenBefore: before === undefined ? null : hashToken(before),
          now,
        })
      : ({ ok: false, error: 'unknown-code' } as const);
    if (joined.ok) {
      response.cookie(seatCookie, token, { httpOnly: true, sameSite: 'strict', secure, path: '/api/join' });
      return void response.json({ token });
    }
    if (joined.error === 'unknown-code') await countFailure(failures, request);
    refuse(response, joined.error);
  });

  return router;
}
