import { materialDensity } from './materials.ts';

/** A material as it is said: by the tables' name, else by its own key in words. */
export function materialName(key: string): string {
  const name = materialDensity(key)?.name ?? key.replaceAll(/[-_]+/g, ' ');
  return name.charAt(0).toUpperCase() + name.slice(1);
}
