import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { ErrorCode } from '../../shared/protocol/errors.ts';
import type { ClassCode, SeatId, StudentId, Time } from '../../shared/protocol/ids.ts';
import { join } from '../classroom/student-commands.ts';
import type { ClassStore } from '../store/store.ts';
import type { NewId } from './ports.ts';
import type { ClassRegistry } from './registry.ts';

export interface JoinRequest {
  readonly code: ClassCode;
  readonly name: string;
  readonly tokenHash: string;
  readonly tokenBefore: string | null;
  readonly now: Time;
}

/** Gives a device a seat in the class that has this code. */
export async function joinClass(
  store: Pick<ClassStore, 'byCode'>,
  registry: ClassRegistry,
  newId: NewId,
  { code, name, tokenHash, tokenBefore, now }: JoinRequest,
): Promise<Result<SeatId, ErrorCode>> {
  const classId = await store.byCode(code);
  const running = classId && (await registry.byId(classId));
  if (!running) return failure('unknown-code');
  const seatId = newId() as SeatId;
  const newStudentId = newId() as StudentId;
  const joining = { name, seatId, tokenHash, tokenBefore, newStudentId, now };
  const done = await running.execute((state) => join(state, joining));
  return done.ok ? success(seatId) : done;
}
