/** A short beep and a buzz when something is to be done by hand. Off until it is asked for, and again in a new tab. */
import { useEffect, useRef } from 'react';

const TONE_HZ = 880;
const LENGTH_S = 0.18;
const BUZZ_MS = [180, 90, 180];

let audio: AudioContext | null = null;

/** Gives the signal once; call it from a press first, since browsers sound nothing of their own accord. */
export function signal(): void {
  try {
    navigator.vibrate?.(BUZZ_MS);
    audio ??= new AudioContext();
    const tone = new OscillatorNode(audio, { frequency: TONE_HZ });
    const level = new GainNode(audio, { gain: 0.2 });
    tone.connect(level).connect(audio.destination);
    tone.start();
    tone.stop(audio.currentTime + LENGTH_S);
  } catch {
    // A browser without sound shows it all the same.
  }
}

/**
 * Signals whenever something else is announced.
 * @param announced - what is to be done and how it stands; null if nothing is
 */
export function useSignal(on: boolean, announced: string | null): void {
  const last = useRef(announced);
  useEffect(() => {
    if (on && announced !== null && announced !== last.current) signal();
    last.current = announced;
  }, [on, announced]);
}
