const half = 8;
const phases = 512;
/** A sinc under a Hann window, for each of 512 places between two samples. */
const kernels = Array.from({ length: phases }, (_, phase) =>
  Float32Array.from({ length: 2 * half }, (__, tap) => {
    const x = tap - half + 1 - phase / phases;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    return sinc * Math.cos((Math.PI * x) / (2 * half)) ** 2;
  }),
);

/** The sound played `speed` times as fast, and so as high. */
export function resampled(samples: Float32Array, speed: number): Float32Array {
  const result = new Float32Array(Math.floor(samples.length / speed));
  for (let at = 0; at < result.length; at += 1) {
    const from = at * speed;
    const whole = Math.floor(from);
    const kernel = kernels[Math.floor((from - whole) * phases)] as Float32Array;
    let sum = 0;
    for (let tap = 0; tap < 2 * half; tap += 1)
      sum += (kernel[tap] as number) * (samples[whole + tap - half + 1] ?? 0);
    result[at] = sum;
  }
  return result;
}
