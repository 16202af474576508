import { useEffect, useState } from "preact/hooks";
import { type ShownPhoto, shownPhoto } from "../data/photo.ts";
import { watch } from "../data/read.ts";

/** A stored picture, its bytes hashed again; undefined while it is read or not `wanted`. */
export function useShownPhoto(hash: string, wanted = true): ShownPhoto | undefined {
  const [state, setState] = useState<{ hash: string; shown: ShownPhoto } | undefined>(undefined);
  useEffect(() => {
    if (!wanted) {
      setState(undefined);
      return;
    }
    // Watched, since a picture taken on another device may arrive while this screen is open.
    return watch(
      () => shownPhoto(hash),
      (shown) => setState({ hash, shown }),
      () => setState({ hash, shown: { state: "missing" } }),
    );
  }, [hash, wanted]);
  return state?.hash === hash ? state.shown : undefined;
}
