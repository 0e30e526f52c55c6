/** Notes that the net names by themselves: E2 to E6, MIDI 40 to 88. */
export const lowestNote = 40;
export const noteCount = 49;
/** Of `binsOf`: three a semitone from MIDI 38 to 106 of now, one a semitone of before. */
export const binCount = 272;

/** What a look at a sound gives, as probabilities 0 to 1. */
export interface NetHeard {
  /** By MIDI note from `lowestNote` on: those newly struck. */
  readonly notes: Float32Array;
  /** By pitch class, C first. */
  readonly tones: Float32Array;
}

/** A small net: bins → two layers → 49 notes and 12 pitch classes. */
export interface Net {
  hear(bins: Float32Array): NetHeard;
}

/** What a file of weights begins with. */
const mark = 'RCEAR001';
const toneCount = 12;

interface Layer {
  readonly outputs: number;
  readonly inputs: number;
  /** Row by row. */
  readonly weights: Float32Array;
  readonly biases: Float32Array;
}

/** The net of a file that `training/train.py` has written; throws where the bytes are something else. */
export function loadNet(bytes: ArrayBuffer): Net {
  const layers = layersOf(bytes);
  return {
    hear: (bins) => {
      const heard = layers.reduce(through, bins).map((logit) => 1 / (1 + Math.exp(-logit)));
      return { notes: heard.subarray(0, noteCount), tones: heard.subarray(noteCount) };
    },
  };
}

/** One layer; all but the last let only what is above zero through. */
function through(inputs: Float32Array, layer: Layer, index: number, layers: readonly Layer[]): Float32Array {
  const { weights, biases } = layer;
  const outputs = new Float32Array(layer.outputs);
  for (let row = 0; row < layer.outputs; row += 1) {
    let sum = biases[row] ?? 0;
    const start = row * layer.inputs;
    for (let column = 0; column < layer.inputs; column += 1)
      sum += (weights[start + column] ?? 0) * (inputs[column] ?? 0);
    outputs[row] = index < layers.length - 1 ? Math.max(0, sum) : sum;
  }
  return outputs;
}

/**
 * Little-endian: the mark, the number of sizes, the sizes from the inputs on (all uint32), then of each layer a scale and
 * a bias for each row (float32) and the rows (int8).
 */
function layersOf(bytes: ArrayBuffer): readonly Layer[] {
  const foreign = (why: string) => new Error(`These are not the weights of the ear: ${why}.`);
  const view = new DataView(bytes);
  const head = mark.length;
  if (bytes.byteLength < head + 4) throw foreign('the file is too short');
  const begins = String.fromCharCode(...new Uint8Array(bytes, 0, head));
  if (begins !== mark) throw foreign(`they begin with another mark than ${mark}`);
  const count = view.getUint32(head, true);
  if (count < 2 || count > 8 || bytes.byteLength < head + 4 + 4 * count)
    throw foreign('the number of layers makes no sense');
  const sizes = Array.from({ length: count }, (_, at) => view.getUint32(head + 4 + 4 * at, true));
  if (sizes[0] !== binCount || sizes.at(-1) !== noteCount + toneCount)
    throw foreign(`they take or give another number of values, ${sizes.join(' → ')}`);
  const pairs = sizes.slice(1).map((outputs, at) => ({ outputs, inputs: sizes[at] ?? 0 }));
  let at = head + 4 + 4 * count;
  const length = pairs.reduce((sum, { outputs, inputs }) => sum + outputs * (8 + inputs), at);
  if (bytes.byteLength !== length)
    throw foreign(`${length} bytes were expected and ${bytes.byteLength} are there`);
  return pairs.map(({ outputs, inputs }) => {
    const floats = () => {
      const read = Float32Array.from({ length: outputs }, (_, row) => view.getFloat32(at + 4 * row, true));
      at += 4 * outputs;
      return read;
    };
    const scales = floats();
    const biases = floats();
    const weights = Float32Array.from(
      new Int8Array(bytes, at, outputs * inputs),
      (weight, index) => weight * (scales[Math.floor(index / inputs)] ?? 0),
    );
    at += outputs * inputs;
    return { outputs, inputs, weights, biases };
  });
}
