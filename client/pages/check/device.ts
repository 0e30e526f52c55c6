/** What this device and its browser offer to a page at this address. */

export type Microphone = 'possible' | 'insecure' | 'absent' | 'denied' | 'unsupported';
export type WakeLock = 'possible' | 'insecure' | 'refused' | 'unsupported';
export type Security = 'https' | 'this-device' | 'plain';

export function findSecurity(): Security {
  if (location.protocol === 'https:') return 'https';
  return isSecureContext ? 'this-device' : 'plain';
}

/** Looks without asking: a question about the microphone would come out of the blue here. */
export async function findMicrophone(): Promise<Microphone> {
  if (!isSecureContext) return 'insecure';
  // Older browsers lack what the types promise.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices) return 'unsupported';
  try {
    const name = 'microphone' as PermissionName;
    if ((await navigator.permissions.query({ name })).state === 'denied') return 'denied';
  } catch {
    // Not every browser tells.
  }
  const found = await devices.enumerateDevices().catch(() => []);
  return found.some(({ kind }) => kind === 'audioinput') ? 'possible' : 'absent';
}

export async function findWakeLock(): Promise<WakeLock> {
  if (!isSecureContext) return 'insecure';
  if (!('wakeLock' in navigator)) return 'unsupported';
  try {
    const lock = await navigator.wakeLock.request('screen');
    await lock.release();
    return 'possible';
  } catch {
    return 'refused';
  }
}
