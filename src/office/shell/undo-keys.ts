import { useEffect } from 'react';
import type { JobSession, JobView } from '../session.ts';

/** Ctrl+Z takes back, Ctrl+Shift+Z or Ctrl+Y makes again; a field that is being typed in keeps its own. */
export function useUndoKeys(session: JobSession | undefined, view: JobView | undefined): void {
  const canUndo = view?.state?.canUndo === true;
  const canRedo = view?.state?.canRedo === true;
  useEffect(() => {
    if (!session) return;
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (event.target instanceof HTMLInputElement && event.target.dataset.typing === 'true') return;
      const key = event.key.toLowerCase();
      const redo = key === 'y' || (key === 'z' && event.shiftKey);
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (redo && canRedo) void session.redo();
      else if (!redo && canUndo) void session.undo();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [session, canUndo, canRedo]);
}
