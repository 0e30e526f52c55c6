import { Router, type Response } from 'express';
import type { RateLimiterMemory } from 'rate-limiter-flexible';
import * as v from 'valibot';
import type { TeacherId, Time } from '../../shared/protocol/ids.ts';
import { textSchema } from '../../shared/protocol/schemas.ts';
import { hashPassphrase, passphraseProblem, verifyPassphrase } from '../passphrases.ts';
import { hashToken, newId, newToken } from '../secrets.ts';
import type { Store } from '../store/store.ts';
import {
  countFailure,
  needTeacher,
  readBody,
  readCookie,
  refuse,
  sessionCookie,
  sessionTeacher,
  takeTry,
} from './guard.ts';

/** How long a sign-in lasts: a term of lessons. Milliseconds. */
const sessionLife = 120 * 24 * 3_600_000;
/** How long a colleague's set-up link lasts. Milliseconds. */
const invitationLife = 7 * 24 * 3_600_000;

const signInSchema = v.strictObject({
  name: textSchema(60),
  passphrase: v.pipe(v.string(), v.maxLength(1000)),
});
const setUpSchema = v.strictObject({ ...signInSchema.entries, token: v.pipe(v.string(), v.maxLength(100)) });

export interface TeacherRouteOptions {
  readonly secure: boolean;
  readonly failures: RateLimiterMemory;
  readonly address: () => string;
  /** Somebody signed out: screens of sessions that are over have to go. */
  readonly sessionsEnded: () => void;
}

/** Set-up, sign-in and invitations. */
export function teacherRoutes(store: Store, options: TeacherRouteOptions): Router {
  const router = Router();
  const cookie = { httpOnly: true, sameSite: 'strict', secure: options.secure } as const;

  async function openSession(response: Response, teacherId: TeacherId): Promise<void> {
    const token = newToken();
    const expiresAt = (Date.now() + sessionLife) as Time;
    await store.teachers.openSession({ tokenHash: hashToken(token), teacherId, expiresAt });
    response.cookie(sessionCookie, token, { ...cookie, maxAge: sessionLife });
  }

  router.get('/me', async (request, response) => {
    const teacher = await sessionTeacher(store, readCookie(request), Date.now());
    response.json({
      teacher: teacher ? { id: teacher.id, name: teacher.name } : null,
      needsSetUp: (await store.teachers.count()) === 0,
    });
  });

  router.post('/set-up', async (request, response) => {
    const body = readBody(setUpSchema, request, response);
    if (!body || !(await takeTry(options.failures, request, response))) return;
    const problem = passphraseProblem(body.passphrase);
    if (problem) return refuse(response, 'malformed', problem);
    if (await store.teachers.byName(body.name)) return refuse(response, 'name-taken');
    const spent = await store.teachers.spendInvitation(hashToken(body.token), Date.now() as Time);
    if (!spent) {
      await countFailure(options.failures, request);
      return refuse(response, 'set-up-link-spent');
    }
    const id = newId() as TeacherId;
    const passphraseHash = await hashPassphrase(body.passphrase);
    const made = await store.teachers.create({
      id,
      name: body.name,
      passphraseHash,
      createdAt: Date.now() as Time,
    });
    if (made === 'name-taken') return refuse(response, 'name-taken');
    await openSession(response, id);
    response.json({ teacher: { id, name: body.name } });
  });

  router.post('/sign-in', async (request, response) => {
    const body = readBody(signInSchema, request, response);
    if (!body || !(await takeTry(options.failures, request, response))) return;
    const teacher = await store.teachers.byName(body.name);
    const fits = await verifyPassphrase(body.passphrase, teacher?.passphraseHash);
    if (!teacher || !fits) {
      await countFailure(options.failures, request);
      return refuse(response, 'sign-in-refused');
    }
    await openSession(response, teacher.id);
    response.json({ teacher: { id: teacher.id, name: teacher.name } });
  });

  router.post('/sign-out', async (request, response) => {
    const token = readCookie(request);
    if (token) await store.teachers.closeSession(hashToken(token));
    options.sessionsEnded();
    response.clearCookie(sessionCookie, cookie).json({});
  });

  router.post('/sign-out-everywhere', async (request, response) => {
    const teacher = await needTeacher(store, request, response);
    if (!teacher) return;
    await store.teachers.closeSessions(teacher.id);
    options.sessionsEnded();
    response.clearCookie(sessionCookie, cookie).json({});
  });

  router.post('/invitations', async (request, response) => {
    if (!(await needTeacher(store, request, response))) return;
    const token = newToken();
    await store.teachers.addInvitation(hashToken(token), (Date.now() + invitationLife) as Time);
    response.json({ link: `${options.address()}/desk/set-up#${token}` });
  });

  return router;
}
