/**
 * Asks the browser not to clear what is kept when space runs short.
 * Some browsers ask the person: it is done when a plan is made or looked for, not while one is typing.
 * @returns whether it will
 */
export async function askToPersist(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist());
  } catch {
    return false;
  }
}
