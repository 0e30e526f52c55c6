"""Trains the net of client/listening on what mix.ts wrote, and writes client/listening/weights.bin.

Bins → two layers → 49 notes and 12 pitch classes; cross-entropy, Adam, plain numpy. `train.py [EPOCHS]`.
"""

import struct
import sys
import time
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
OUT = HERE.parent / "client" / "listening" / "weights.bin"
MARK = b"RCEAR001"
BINS = 204
SIZES = (BINS + BINS // 3, 256, 140, 61)
NOTES = 49
BATCH = 256
# Kept apart for the figures printed at the end and for the calibration.
HELD = 20


def looks():
    rows = np.concatenate([np.fromfile(path, np.uint8) for path in sorted((HERE / "cache").glob("looks-*.raw"))])
    rows = rows.reshape(-1, 2 * BINS + SIZES[-1])
    # Scenes give two looks each: both on the same side.
    scene = np.arange(len(rows)) // 2
    held = scene % HELD == 0
    return rows[~held], rows[held]


def parts(rows, higher=0):
    """Bins, what is right, and where that may be asked; all moved so many semitones higher."""
    now, before, right = np.split(rows, (BINS, 2 * BINS), axis=1)
    notes, tones = right[:, :NOTES], right[:, NOTES:]
    if higher:
        now, before, notes = moved(now, 3 * higher), moved(before, 3 * higher), moved(notes, higher)
        right = np.concatenate((notes, np.roll(tones, higher, axis=1)), axis=1)
    coarse = np.roll(before, 1, axis=1).reshape(len(rows), -1, 3).max(axis=2)
    bins = np.concatenate((now, coarse), axis=1).astype(np.float32) / 255
    return bins, right.astype(np.float32) / 255, (right != 128).astype(np.float32)


def moved(values, by):
    if by == 0:
        return values
    empty = np.zeros((len(values), abs(by)), values.dtype)
    return np.concatenate((empty, values[:, :-by]) if by > 0 else (values[:, -by:], empty), axis=1)


def sigmoid(logits):
    return 1 / (1 + np.exp(-np.clip(logits, -30, 30)))


def forward(layers, bins):
    kept = [bins]
    for index, (weights, biases) in enumerate(layers):
        values = kept[-1] @ weights.T + biases
        kept.append(np.maximum(values, 0) if index < len(layers) - 1 else values)
    return kept


def trained(rows, epochs, random):
    layers = [
        [random.normal(0, np.sqrt(2 / a), (b, a)).astype(np.float32), np.zeros(b, np.float32)]
        for a, b in zip(SIZES, SIZES[1:])
    ]
    # The net learns from bins about zero and about one apart; what it means for plain bins is said at the end.
    some = parts(rows[:: max(1, len(rows) // 20_000)])[0]
    middle, spread = some.mean(axis=0), some.std(axis=0) + 0.02
    moments = [[[np.zeros_like(p), np.zeros_like(p)] for p in layer] for layer in layers]
    average = [[p.copy() for p in layer] for layer in layers]
    # Tones decide; notes help them, and lines.
    weight = np.concatenate((np.full(NOTES, 0.5), np.ones(12))).astype(np.float32)
    batches = len(rows) // BATCH
    for step in range(epochs * batches):
        if step % batches == 0:
            order, total = random.permutation(len(rows)), 0.0
        at = step % batches * BATCH
        # The same hand higher or lower on the neck: nothing else would teach every note on every guitar.
        bins, right, fair = parts(rows[np.sort(order[at : at + BATCH])], random.integers(-4, 5))
        # Another microphone: the bins a little stronger or weaker, slowly changing from bin to bin.
        knots = random.normal(0, 0.04, (BATCH, len(HILLS))).astype(np.float32)
        bins = np.where(bins > 0, np.clip(bins + knots @ HILLS, 0, 1), 0)
        kept = forward(layers, (bins - middle) / spread)
        wrong = (sigmoid(kept[-1]) - right) * fair * weight
        total += float(np.mean(np.abs(wrong)))
        slope = wrong / BATCH
        rate = 2e-3 * (0.5 + 0.5 * np.cos(np.pi * step / (epochs * batches))) * min(1, (step + 1) / 200)
        for index in reversed(range(len(layers))):
            weights, _ = layers[index]
            slopes = (slope.T @ kept[index] + 1e-6 * weights, slope.sum(axis=0))
            if index > 0:
                slope = (slope @ weights) * (kept[index] > 0)
            for p, g, (first, second), mean in zip(layers[index], slopes, moments[index], average[index]):
                first += 0.1 * (g - first)
                second += 0.002 * (g * g - second)
                p -= rate * (first / (1 - 0.9 ** (step + 1))) / (np.sqrt(second / (1 - 0.998 ** (step + 1))) + 1e-8)
                mean += 0.002 * (p - mean)
        if step % batches == batches - 1:
            print(f"epoch {step // batches + 1}: {total / batches:.5f} off on average", flush=True)
    weights, biases = average[0]
    weights /= spread
    biases -= weights @ middle
    return average


# Over the bins of now, and over the coarser ones of before, which follow the same microphone.
ALONG = np.concatenate((np.linspace(0, 8, BINS), np.linspace(0, 8, SIZES[0] - BINS)))
HILLS = np.maximum(0, 1 - np.abs(np.arange(9)[:, None] - ALONG[None, :])).astype(np.float32)


def calibrated(layers, rows):
    """A bias and a scale for each output, so that what is said to be half likely is right half of the time."""
    bins, right, fair = parts(rows)
    logits = forward(layers, bins)[-1]
    weights, biases = layers[-1]
    for output in range(SIZES[-1]):
        kept = fair[:, output] > 0
        x, y = logits[kept, output].astype(np.float64), right[kept, output]
        scale, shift = 1.0, 0.0
        for _ in range(30):
            p = sigmoid(scale * x + shift)
            curve = p * (1 - p) + 1e-9
            slope = np.array([np.sum((p - y) * x) + 5 * (scale - 1), np.sum(p - y)])
            hesse = np.array([[np.sum(curve * x * x) + 5, np.sum(curve * x)], [np.sum(curve * x), np.sum(curve) + 1e-6]])
            move = np.linalg.solve(hesse, slope)
            scale, shift = scale - np.clip(move[0], -0.2, 0.2), shift - np.clip(move[1], -0.5, 0.5)
        weights[output] *= scale
        biases[output] = biases[output] * scale + shift


def quantised(layers):
    """The bytes of the file, and the net that they stand for."""
    file, heard = MARK + struct.pack(f"<{len(SIZES) + 1}I", len(SIZES), *SIZES), []
    for weights, biases in layers:
        scales = (np.abs(weights).max(axis=1) / 127 + 1e-12).astype("<f4")
        whole = np.clip(np.round(weights / scales[:, None]), -127, 127).astype(np.int8)
        file += scales.tobytes() + biases.astype("<f4").tobytes() + whole.tobytes()
        heard.append((whole * scales[:, None], biases))
    return file, heard


def figures(layers, rows):
    bins, right, fair = parts(rows)
    said = sigmoid(forward(layers, bins)[-1])
    is_wrong = ((said >= 0.5) != (right >= 0.5)) & (fair > 0)
    tones, notes = is_wrong[:, NOTES:], is_wrong[:, :NOTES]
    whole = ~tones.any(axis=1)
    counted = (right[:, NOTES:] >= 0.5).sum(axis=1)
    doubtful = ((said[:, NOTES:] > 0.35) & (said[:, NOTES:] < 0.65)).any(axis=1)
    print(f"{len(rows)} looks kept apart (the same guitars, other mixes)")
    print(f"tones right {1 - tones.mean():.3%}, notes {1 - notes.mean():.3%}; a doubtful tone in {doubtful.mean():.1%}")
    for count in range(7):
        of = counted == count
        if of.any():
            print(f"  {count} tones: all right in {whole[of].mean():.2%} of {of.sum()}")


def main():
    epochs = int(sys.argv[1]) if len(sys.argv) > 1 else 75
    start = time.time()
    random = np.random.default_rng(7)
    rows, held = looks()
    print(f"{len(rows)} looks to learn from")
    layers = trained(rows, epochs, random)
    calibrated(layers, held)
    file, heard = quantised(layers)
    figures(heard, held)
    OUT.write_bytes(file)
    print(f"{len(file)} bytes in {OUT}, {(time.time() - start) / 60:.1f} minutes")


main()
