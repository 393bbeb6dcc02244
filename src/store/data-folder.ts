import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where the platform keeps an application's data when no folder is named: Application Support on macOS,
 * LocalAppData on Windows, else the XDG base directory (specification 0.8: `$XDG_DATA_HOME`, `~/.local/share`).
 */
export function defaultDataFolder(
  platform: NodeJS.Platform = process.platform,
  environment: Record<string, string | undefined> = process.env,
  home: string = homedir(),
): string {
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Scantling');
  if (platform === 'win32')
    return join(environment.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), 'Scantling');
  const xdg = environment.XDG_DATA_HOME;
  return join(xdg?.startsWith('/') ? xdg : join(home, '.local', 'share'), 'scantling');
}
