#!/bin/sh
# Everything from the sound sources to client/listening/weights.bin: see README.md beside it.
set -e
cd "$(dirname "$0")/.."
# More threads than free cores make small matrices slower.
export OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1
[ -f training/cache/notes.json ] || nice python3 training/render.py
for seeds in "1 2" "3 4"; do
  mixes=""
  for seed in $seeds; do
    nice node tests/server/store/run-typescript.mjs training/mix.ts 27500 "$seed" &
    mixes="$mixes $!"
  done
  for mix in $mixes; do wait "$mix"; done
done
nice python3 training/train.py
