import type { PlacedSolid } from '../results/kernel.ts';
import { type ExactSolid, locationOf } from './exact-kernel.ts';
import { type Oc, scoped } from './exact-shapes.ts';

/** A file in the memory of the wasm module. */
const FILE = 'piece.step';

/**
 * STEP (ISO 10303-21) of a piece: every solid once, with components that stand where it stands, in mm. Parts carry
 * the names of the parts list, components those of the copies, in UTF-8.
 */
export function writeStep(oc: Oc, title: string, solids: readonly PlacedSolid[]): Uint8Array {
  return scoped(scope => {
    const words = (text: string) => scope.keep(new oc.TCollection_ExtendedString(text, true));
    const document = scope.keep(new oc.TDocStd_Document(words('BinXCAF')));
    const main = scope.keep(document.Main());
    const tool = scope.keep(oc.XCAFDoc_DocumentTool.ShapeTool(main));
    const whole = scope.keep(tool.NewShape());
    scope.keep(oc.TDataStd_Name.Set(whole, words(title)));
    for (const { name, solid, at } of solids) {
      const part = scope.keep(tool.AddShape((solid as ExactSolid).body, false, false));
      scope.keep(oc.TDataStd_Name.Set(part, words(name)));
      for (const place of at) {
        const component = scope.keep(tool.AddComponent(whole, part, locationOf(oc, scope, place.frame)));
        scope.keep(oc.TDataStd_Name.Set(component, words(place.name)));
      }
    }
    tool.UpdateAssemblies();
    const writer = scope.keep(new oc.STEPCAFControl_Writer());
    writer.SetNameMode(true);
    if (!writer.Perform(document, FILE, scope.keep(new oc.Message_ProgressRange())))
      throw new Error('the exact kernel cannot write this piece as STEP');
    const bytes = Uint8Array.from(oc.FS.readFile(FILE) as Uint8Array);
    oc.FS.unlink(FILE);
    return bytes;
  });
}
