"""Renders the single notes and the speech that mix.ts mixes: mono, 22,050 Hz, 16 bits, in training/cache.

Notes are of General MIDI programs 24 to 27 and 29 of FluidR3_GM.sf2, played by FluidSynth, and of plucked strings computed here.
"""

import itertools
import json
import subprocess
import wave
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
CACHE = HERE / "cache"
SOUNDFONT = "/usr/share/sounds/sf2/FluidR3_GM.sf2"
RATE = 22050
NOTES = range(38, 89)
VELOCITIES = (55, 85, 115)
# 28, muted strings, is left out: palm mutes are not judged.
PROGRAMS = (24, 25, 26, 27, 29)
SECONDS = 1.6
STRUNG_GUITARS = 24
VOICES = ("en-us+m5", "en-gb+m2", "de+m1", "de+f4", "fr+m4", "fr+f4", "es+m2", "it+f1", "pl+m5", "sv+f2", "tr+m6", "hi+f5")
SENTENCES = {
    "en": "Wait a moment, I have lost the place. Could you show me again where the second finger goes? Oh, there. "
    "Right, one, two, three, four. My hand is tired, let us stop for a minute. What comes after this line?",
    "de": "Moment, ich bin noch nicht so weit. Kannst du mir das noch einmal zeigen? Wo liegt der zweite Finger? "
    "Ach so, jetzt sehe ich es. Eins, zwei, drei, vier. Machen wir eine kurze Pause.",
    "fr": "Attends un peu, je ne suis pas encore prêt. Tu peux me montrer encore une fois ? Où va le deuxième doigt ? "
    "Ah oui, je vois. Un, deux, trois, quatre. On fait une petite pause.",
    "es": "Espera un momento, todavía no estoy listo. ¿Me lo enseñas otra vez? ¿Dónde va el segundo dedo? "
    "Ah, ya lo veo. Uno, dos, tres, cuatro. Vamos a descansar un poco.",
    "it": "Aspetta un momento, non sono ancora pronto. Me lo fai vedere di nuovo? Dove va il secondo dito? "
    "Ah, adesso vedo. Uno, due, tre, quattro. Facciamo una piccola pausa.",
    "pl": "Poczekaj chwilę, jeszcze nie jestem gotowy. Czy możesz pokazać mi to jeszcze raz? Raz, dwa, trzy, cztery.",
    "sv": "Vänta lite, jag är inte klar än. Kan du visa mig en gång till? Ett, två, tre, fyra. Nu tar vi en paus.",
    "tr": "Bir dakika, henüz hazır değilim. Bana bir kez daha gösterir misin? Bir, iki, üç, dört.",
    "hi": "एक मिनट रुको, मैं अभी तैयार नहीं हूँ। क्या तुम मुझे फिर से दिखा सकते हो? एक, दो, तीन, चार।",
}


def variable_length(value):
    digits = [value & 127]
    while value := value >> 7:
        digits.append(128 | (value & 127))
    return bytes(reversed(digits))


def midi_file(program, velocity):
    """Each note for SECONDS, and half a second of silence: 480 ticks a second."""
    track = bytes((0, 0xC0, program))
    rest = 0
    for note in NOTES:
        track += variable_length(rest) + bytes((0x90, note, velocity))
        track += variable_length(round(480 * SECONDS)) + bytes((0x80, note, 0))
        rest = 240
    track = b"\x00\xff\x51\x03" + (500_000).to_bytes(3, "big") + track + b"\x00\xff\x2f\x00"
    head = b"MThd" + (6).to_bytes(4, "big") + bytes((0, 0, 0, 1, 0, 240))
    return head + b"MTrk" + len(track).to_bytes(4, "big") + track


def samples_of(path):
    with wave.open(str(path)) as sound:
        frames = np.frombuffer(sound.readframes(sound.getnframes()), "<i2").reshape(-1, sound.getnchannels())
        return frames.mean(axis=1) / 32768, sound.getframerate()


def resampled(sound, rate):
    """At RATE, by cutting or padding the spectrum."""
    count = round(len(sound) * RATE / rate)
    spectrum = np.fft.rfft(sound)
    kept = np.zeros(count // 2 + 1, complex)
    shared = min(len(spectrum), len(kept))
    kept[:shared] = spectrum[:shared]
    return np.fft.irfft(kept, count) * count / len(sound)


def trimmed(sound):
    """From just before it is heard, for SECONDS, faded out."""
    first = int(np.argmax(np.abs(sound) > 0.03 * np.abs(sound).max()))
    cut = sound[max(0, first - round(0.002 * RATE)) :][: round(SECONDS * RATE)]
    return np.concatenate((cut, np.zeros(round(SECONDS * RATE) - len(cut))))


def soundfont_notes():
    for program in PROGRAMS:
        for velocity in VELOCITIES:
            midi, sound = CACHE / "notes.mid", CACHE / "notes.wav"
            midi.write_bytes(midi_file(program, velocity))
            command = ["fluidsynth", "-ni", "-R", "0", "-C", "0", "-g", "0.5", "-r", "44100", "-F", sound, SOUNDFONT, midi]
            subprocess.run(command, check=True, capture_output=True)
            both, rate = samples_of(sound)
            for index, note in enumerate(NOTES):
                start = round(index * (SECONDS + 0.5) * rate)
                one = both[start : start + round((SECONDS + 0.1) * rate)]
                yield f"program {program}", note, trimmed(resampled(one, rate))


def strung_notes(random):
    """Plucked strings: harmonics by where the string is plucked, each with its own decay; a body, and a pick."""
    time = np.arange(round(SECONDS * RATE)) / RATE
    for guitar in range(STRUNG_GUITARS):
        pluck = random.uniform(0.06, 0.3)
        dullness = random.uniform(0.2, 1.6)
        stiffness = 10 ** random.uniform(-5, -3.7)
        ring = random.uniform(0.4, 3)
        damping = 10 ** random.uniform(-3.2, -1.6)
        resonances = [(random.uniform(80, 400), random.uniform(1, 3)), (random.uniform(150, 3000), random.uniform(0, 2))]
        pick = 10 ** random.uniform(-2.5, -0.8)
        for note in NOTES:
            pitch = 440 * 2 ** ((note - 69) / 12)
            count = np.arange(1, min(70, int(9500 / pitch)) + 1)
            own = pluck * 2 ** ((note - 45) / 40) * random.uniform(0.8, 1.2)
            strength = np.abs(np.sin(np.pi * count * own)) / count**dullness * 10 ** (random.normal(0, 3.5, len(count)) / 20)
            pitches = pitch * count * np.sqrt((1 + stiffness * count**2) / (1 + stiffness))
            for centre, height in resonances:
                strength *= 1 + height / (1 + ((pitches - centre) / (0.2 * centre)) ** 2)
            decay = (1 / ring + damping * count**1.5) * random.uniform(0.6, 1.6, len(count)) * 2 ** ((note - 60) / 18)
            glide = 1 + random.uniform(0, 0.004) * np.exp(-time / 0.04)
            phase = 2 * np.pi * np.cumsum(glide) / RATE
            sound = np.zeros(len(time))
            for f, a, d in zip(pitches, strength, decay):
                # A string swings in two planes of slightly different pitch, and beats.
                beat = random.uniform(0, 1.2)
                share = random.uniform(0, 0.5)
                wave_ = np.sin(f * phase + random.uniform(0, 6.28)) * np.exp(-d * time)
                sound += a * ((1 - share) * wave_ + share * np.sin((f + beat) * phase) * np.exp(-0.5 * d * time))
            click = random.normal(0, 1, len(time)) * np.exp(-time / random.uniform(0.002, 0.012))
            sound = sound / np.abs(sound).max() + pick * click
            sound *= np.minimum(1, time / random.uniform(0.0005, 0.004))
            yield f"strung {guitar}", note, sound


def spoken():
    """Every voice lower and higher, slower and faster: a slow high one is the likest to a string."""
    path = CACHE / "speech.wav"
    for voice, pitch, speed in itertools.product(VOICES, (30, 50, 70, 90), (115, 170)):
        manner = ["-v", voice, "-p", str(pitch), "-s", str(speed)]
        subprocess.run(["espeak-ng", *manner, "-w", path, SENTENCES[voice[:2]]], check=True, capture_output=True)
        sound, rate = samples_of(path)
        yield resampled(sound, rate)


def main():
    CACHE.mkdir(exist_ok=True)
    random = np.random.default_rng(7)
    rows = []
    with open(CACHE / "notes.raw", "wb") as raw:
        for notes in (soundfont_notes(), strung_notes(random)):
            for source, note, sound in notes:
                # Alike in loudness over the first 0.4 s: how loud each string is, mix.ts decides.
                loudness = np.sqrt(np.mean(sound[: round(0.4 * RATE)] ** 2))
                raw.write(np.clip(sound / loudness * 2500, -32767, 32767).astype("<i2").tobytes())
                rows.append({"source": source, "note": note})
            print(f"{len(rows)} notes")
    speech = np.concatenate(list(spoken()))
    (CACHE / "speech.raw").write_bytes((speech / np.abs(speech).max() * 32000).astype("<i2").tobytes())
    print(f"{len(speech) / RATE:.0f} s of speech")
    (CACHE / "notes.json").write_text(json.dumps({"rate": RATE, "length": round(SECONDS * RATE), "rows": rows}))


main()
