import type { GroupId } from '../shared/protocol/ids.ts';
import type { Clock, Log } from './live/ports.ts';
import type { Store } from './store/store.ts';

/** Milliseconds. */
const hour = 3_600_000;

export interface PurgingTools {
  readonly clock: Clock;
  readonly log: Log;
  /** Called for each group that was deleted. */
  readonly gone: (groupId: GroupId) => Promise<void>;
}

/** Deletes what is over, now and every hour; gives back how to stop. What can't be deleted now is an hour later. */
export async function purgeHourly(
  { teachers, groups }: Pick<Store, 'teachers' | 'groups'>,
  { clock, log, gone }: PurgingTools,
): Promise<() => void> {
  const purge = async () => {
    await teachers.forgetExpired(clock.now());
    for (const groupId of await groups.purge(clock.now())) await gone(groupId);
  };
  let stop: () => void;
  const next = () => {
    stop = clock.after(hour, () => {
      next();
      purge().catch((error: unknown) => log.error({ error }, 'what is over could not be deleted'));
    });
  };
  await purge();
  next();
  return () => stop();
}
