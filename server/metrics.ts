import { createHistogram } from 'node:perf_hooks';
import { Counter, Gauge, Histogram, Registry } from 'prom-client';
import type { ClassId, RoundId } from '../shared/protocol/ids.ts';
import type { EventLoop } from './event-loop.ts';
import { limitNames, type LimitName } from './limits.ts';
import type { ClassStore } from './store/store.ts';

/** What a monitor may know: counts and times, of nobody in particular. */
export interface Metrics {
  /** The same store, with its commits counted and timed. */
  measured(store: ClassStore): ClassStore;
  refused(limit: LimitName): void;
  /** In the text format of Prometheus. */
  text(): Promise<string>;
  readonly contentType: string;
  /** In short, for a person who looks in. */
  summary(): Promise<object>;
}

export interface MetricsSources {
  readonly eventLoop: EventLoop;
  /** Screens connected now, by what they are. */
  readonly connected: () => Readonly<Record<string, number>>;
  readonly openClasses: () => Promise<number>;
}

/** In seconds: from a disk that answers at once to one that stands still. */
const commitBuckets = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5];

export function createMetrics({ eventLoop, connected, openClasses }: MetricsSources): Metrics {
  const registry = new Registry();
  const registers = [registry];
  const rounds = new Counter({ name: 'rootcall_rounds_total', help: 'Rounds asked', registers });
  const answers = new Counter({ name: 'rootcall_answers_total', help: 'Answers made durable', registers });
  const failures = new Counter({
    name: 'rootcall_commit_failures_total',
    help: 'Commits that failed',
    registers,
  });
  const commits = new Histogram({
    name: 'rootcall_commit_seconds',
    help: 'From a decision to its being durable',
    buckets: commitBuckets,
    registers,
  });
  const refusals = new Counter({
    name: 'rootcall_refused_total',
    help: 'What a limit turned away',
    labelNames: ['limit'],
    registers,
  });
  for (const limit of limitNames) refusals.inc({ limit }, 0);
  new Gauge({
    name: 'rootcall_connected',
    help: 'Screens connected',
    labelNames: ['role'],
    registers,
    collect() {
      for (const [role, count] of Object.entries(connected())) this.set({ role }, count);
    },
  });
  gauge('rootcall_open_classes', 'Classes not closed', openClasses);
  gauge('rootcall_event_loop_lag_seconds', 'Lag of the event loop that lasted through the last second', () =>
    seconds(eventLoop.lag()),
  );
  gauge('rootcall_event_loop_lag_p99_seconds', 'Lag of the event loop since the start, 99th percentile', () =>
    seconds(eventLoop.p99()),
  );
  gauge('process_resident_memory_bytes', 'Memory of the process', () => process.memoryUsage.rss());
  gauge('process_heap_used_bytes', 'Heap in use', () => process.memoryUsage().heapUsed);

  /** The exact percentile; the buckets are for graphs. In microseconds. */
  const commitTimes = createHistogram();
  const lastRounds = new Map<ClassId, RoundId>();

  function gauge(name: string, help: string, read: () => number | Promise<number>): void {
    new Gauge({
      name,
      help,
      registers,
      async collect() {
        this.set(await read());
      },
    });
  }

  return {
    contentType: registry.contentType,
    measured: (store) => ({
      ...store,
      async commit(id, changes) {
        const startedAt = performance.now();
        try {
          await store.commit(id, changes);
        } catch (error) {
          failures.inc();
          throw error;
        }
        const took = performance.now() - startedAt;
        commits.observe(seconds(took));
        commitTimes.record(Math.max(1, Math.round(took * 1000)));
        for (const change of changes) {
          if (change.kind === 'answer') answers.inc();
          // A hold that is taken back opens the same round once more.
          if (change.kind !== 'round' || lastRounds.get(id) === change.round.id) continue;
          lastRounds.set(id, change.round.id);
          if (change.round.phase === 'open') rounds.inc();
        }
      },
    }),
    refused: (limit) => refusals.inc({ limit }),
    text: () => registry.metrics(),
    async summary() {
      return {
        connected: connected(),
        rounds: await total(rounds),
        answers: await total(answers),
        commitP99Ms: commitTimes.count > 0 ? commitTimes.percentile(99) / 1000 : 0,
        eventLoopLagP99Ms: Math.round(eventLoop.p99() * 10) / 10,
      };
    },
  };
}

function seconds(milliseconds: number): number {
  return milliseconds / 1000;
}

async function total(counter: Counter): Promise<number> {
  return (await counter.get()).values.reduce((sum, { value }) => sum + value, 0);
}
