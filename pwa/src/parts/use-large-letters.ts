import { useEffect } from "preact/hooks";

/** Below this width in letters (rem), bars that stay in place would hide what they frame. */
const least = 16;

/**
 * Marks the page as filled by large letters, whoever made them large: device, browser
 * or a reader's own style. A media query would see only the first two.
 */
export function useLargeLetters(): void {
  useEffect(() => {
    const root = document.documentElement;
    const probe = document.createElement("div");
    probe.className = "letter-probe";
    document.body.append(probe);
    const look = () => {
      root.toggleAttribute("data-large", root.clientWidth < least * probe.offsetWidth);
    };
    const observer = new ResizeObserver(look);
    observer.observe(probe);
    observer.observe(root);
    return () => {
      observer.disconnect();
      probe.remove();
    };
  }, []);
}
