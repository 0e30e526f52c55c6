import { monitorEventLoopDelay } from 'node:perf_hooks';

/** How late everything in this process is, in milliseconds. */
export interface EventLoop {
  /** What the last two half seconds had in common: one long stall that is over is no lag. */
  lag(): number;
  /** Since the start: 99 of 100 looks at the clock were no later than this. */
  p99(): number;
  stop(): void;
}

const window = 500;
const resolution = 20;
const nanoseconds = 1e6;

/** In each window the mean of the stalls, weighted by their length: how long a stall a moment of it fell into. */
export function watchEventLoop(): EventLoop {
  const delays = monitorEventLoopDelay({ resolution });
  const sinceStart = monitorEventLoopDelay({ resolution });
  let latest = 0;
  let before = 0;
  delays.enable();
  sinceStart.enable();
  const timer = setInterval(() => {
    const { count, mean, stddev } = delays;
    before = latest;
    latest = count > 0 ? Math.max(0, (mean ** 2 + stddev ** 2) / mean / nanoseconds - resolution) : 0;
    delays.reset();
  }, window);
  timer.unref();
  return {
    lag: () => Math.min(latest, before),
    p99: () => (sinceStart.count > 0 ? Math.max(0, sinceStart.percentile(99) / nanoseconds - resolution) : 0),
    stop() {
      clearInterval(timer);
      delays.disable();
      sinceStart.disable();
    },
  };
}
