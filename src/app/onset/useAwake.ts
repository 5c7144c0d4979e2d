/** Keeps the screen on while a run is near or under way (W3C Screen Wake Lock), where the browser can. */
import { useEffect, useState } from 'react';

/** `no`: this browser cannot, or the phone will not. */
export type Awake = 'off' | 'on' | 'no';

/** @param wanted - whether the screen should stay on */
export function useAwake(wanted: boolean): Awake {
  const [awake, setAwake] = useState<Awake>('off');
  useEffect(() => {
    if (!wanted) return;
    let lock: WakeLockSentinel | null = null;
    let left = false;
    // The lock is lost whenever the page is hidden.
    const ask = async () => {
      if (document.hidden) return;
      try {
        if (!('wakeLock' in navigator)) throw new Error('none');
        lock = await navigator.wakeLock.request('screen');
        if (left) void lock.release();
        else setAwake('on');
      } catch {
        if (!left) setAwake('no');
      }
    };
    void ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release().catch(() => null);
      setAwake('off');
    };
  }, [wanted]);
  return awake;
}
