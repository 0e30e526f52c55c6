import { parseCookie } from 'cookie';
import type { Request, RequestHandler, Response } from 'express';
import type { RateLimiterMemory } from 'rate-limiter-flexible';
import * as v from 'valibot';
import { errorReply, type ErrorCode } from '../../shared/protocol/errors.ts';
import type { GroupId, Time } from '../../shared/protocol/ids.ts';
import type { Group, Store, Teacher } from '../store/store.ts';
import { hashToken } from '../secrets.ts';

export const sessionCookie = 'rootcall-desk';

const statusOf: Partial<Record<ErrorCode, number>> = {
  'not-signed-in': 401,
  'sign-in-refused': 401,
  'not-allowed': 403,
  'not-found': 404,
  'unknown-code': 404,
  'name-taken': 409,
  'too-many-tries': 429,
  'store-failed': 503,
  'server-failed': 500,
};

/** Answers with a code and a sentence for a person. */
export function refuse(response: Response, code: ErrorCode, message?: string): void {
  response.status(statusOf[code] ?? 400).json({ error: errorReply(code, message) });
}

/** The body in the schema's shape; undefined after a refusal was sent. */
export function readBody<Schema extends v.GenericSchema>(
  schema: Schema,
  request: Request,
  response: Response,
): v.InferOutput<Schema> | undefined {
  const parsed = v.safeParse(schema, request.body);
  if (parsed.success) return parsed.output;
  const [issue] = parsed.issues;
  const field = issue.path?.map((item) => String(item.key)).join('.');
  if (issue.type === 'max_length')
    refuse(response, 'too-long', field ? `This is too long: ${field}.` : undefined);
  else refuse(response, 'malformed', field ? `This could not be read: ${field}.` : undefined);
  return undefined;
}

export function readCookie(request: Request, name = sessionCookie): string | undefined {
  return parseCookie(request.headers.cookie ?? '')[name];
}

/** The teacher of a session, from the cookie that the browser sends. */
export async function sessionTeacher(
  store: Store,
  cookie: string | undefined,
  now: number,
): Promise<Teacher | undefined> {
  return cookie === undefined ? undefined : store.teachers.sessionTeacher(hashToken(cookie), now as Time);
}

/** The signed-in teacher; undefined after a refusal was sent. */
export async function needTeacher(
  store: Store,
  request: Request,
  response: Response,
): Promise<Teacher | undefined> {
  const teacher = await sessionTeacher(store, readCookie(request), Date.now());
  if (!teacher) refuse(response, 'not-signed-in');
  return teacher;
}

/** The teacher's own group; undefined after a refusal was sent. */
export async function needGroup(
  store: Store,
  request: Request,
  response: Response,
  id: string,
): Promise<Group | undefined> {
  const teacher = await needTeacher(store, request, response);
  if (!teacher) return undefined;
  const group = await store.groups.byId(id as GroupId);
  if (!group) refuse(response, 'not-found');
  else if (group.teacherId !== teacher.id) refuse(response, 'not-allowed');
  return group?.teacherId === teacher.id ? group : undefined;
}

/**
 * Writes come from our own pages only: the browser says where a request was made. A form of another site can't send
 * JSON, nor DELETE, without a browser asking us first.
 */
export function fromOwnPages(isAllowedOrigin: (request: Request) => boolean): RequestHandler {
  return (request, response, next) => {
    const { method, headers } = request;
    if (method === 'GET' || method === 'HEAD') return next();
    if (!isAllowedOrigin(request) || headers['sec-fetch-site'] === 'cross-site')
      return refuse(response, 'not-allowed', 'This request came from another site.');
    if (method !== 'DELETE' && !/^application\/json\s*(;|$)/i.test(headers['content-type'] ?? ''))
      return refuse(response, 'malformed');
    next();
  };
}

/** Failed tries in a minute, by address: a whole school may share one. */
export const codeTries = { points: 60, duration: 60 } as const;
export const signInTries = { points: 30, duration: 60 } as const;

/** Counts a try by address; false, after a refusal was sent, once there were too many. */
export async function takeTry(
  limiter: RateLimiterMemory,
  request: Request,
  response: Response,
): Promise<boolean> {
  const state = await limiter.get(request.ip ?? '');
  if (!state || state.remainingPoints > 0) return true;
  refuse(response, 'too-many-tries');
  return false;
}

/** A try that failed, by address: a whole school may share one, so only failures count. */
export async function countFailure(limiter: RateLimiterMemory, request: Request): Promise<void> {
  await limiter.consume(request.ip ?? '').catch(() => undefined);
}
