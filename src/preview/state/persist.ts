import { effect, type Signal, signal } from '@preact/signals';

/**
 * A choice the person made, remembered by the browser from one visit to the next. Where it keeps nothing (a page from
 * disk, a private window) it lasts as long as the page.
 */
export function persisted<T extends string>(name: string, usual: T, allowed: readonly T[]): Signal<T> {
  const known = allowed.find((one) => one === read(name));
  const choice = signal<T>(known ?? usual);
  effect(() => write(name, choice.value));
  return choice;
}

const key = (name: string): string => `discwright ${name}`;

function read(name: string): string | null {
  try {
    return localStorage.getItem(key(name));
  } catch {
    return null;
  }
}

function write(name: string, value: string): void {
  try {
    localStorage.setItem(key(name), value);
  } catch {
    // Then it is not remembered; there is nothing the person could do about it.
  }
}
