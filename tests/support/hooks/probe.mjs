import { createRequire } from 'node:module';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import process from 'node:process';

/**
 * Loaded into a server process by `--import`, with an IPC channel: says from inside what it costs. Each message
 * is answered with the figures since the one before.
 */
// A finer look would cost more than a class does.
const every = 10;
const delay = monitorEventLoopDelay({ resolution: every });
delay.enable();
let cpu = process.cpuUsage();
/** When the newest push left, by the machine's own clock: comparable between processes. Nanoseconds. */
globalThis.rootcallMarks = { durable: 0n, emitted: 0n };

// Every broadcast goes through here, whichever way it is asked for.
const require = createRequire(import.meta.url);
const { Adapter } = require('socket.io-adapter');
const { broadcast } = Adapter.prototype;
Adapter.prototype.broadcast = function (packet, options) {
  if (packet?.data?.[0] === 'stand:shared') globalThis.rootcallMarks.emitted = process.hrtime.bigint();
  return broadcast.call(this, packet, options);
};

process.on('message', ({ id, collect }) => {
  if (collect) for (let run = 0; run < 3; run += 1) globalThis.gc?.();
  const used = process.cpuUsage(cpu);
  cpu = process.cpuUsage();
  const { rss, heapUsed, external } = process.memoryUsage();
  const resources = Object.entries(
    Object.groupBy?.(process.getActiveResourcesInfo(), (one) => one) ?? count(),
  );
  process.send({
    id,
    cpu: (used.user + used.system) / 1000,
    stall: Math.max(0, delay.max / 1e6 - every),
    rss,
    heap: heapUsed + external,
    resources: Object.fromEntries(resources.map(([name, found]) => [name, found.length])),
    durable: String(globalThis.rootcallMarks.durable),
    emitted: String(globalThis.rootcallMarks.emitted),
  });
  delay.reset();
});

function count() {
  const found = {};
  for (const name of process.getActiveResourcesInfo()) (found[name] ??= []).push(name);
  return found;
}
process.channel?.unref();
// Whoever started it is gone.
process.on('disconnect', () => process.exit());
