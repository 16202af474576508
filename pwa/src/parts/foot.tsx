import { useLocation } from "preact-iso";
import { frameWords as words } from "../words/frame.ts";

const screens = [
  {
    href: "/",
    title: words.listings,
    // A tag on its string.
    mark: "M8 6 12 2l4 4v16H8ZM12 7.5v.1M10.5 13h3M10.5 17h3",
  },
  // Three sizes side by side on one base.
  {
    href: "/comparables",
    title: words.comparables,
    mark: "M3 21h18M5 21V13h4v8M10 21V5h4v16M15 21v-11h4v11",
  },
  // A ruled list with figures.
  {
    href: "/prices",
    title: words.prices,
    mark: "M4 3h16v18H4ZM7 8h6M17 8h.1M7 12h6M17 12h.1M7 16h6M17 16h.1",
  },
  // Three sliders.
  { href: "/settings", title: words.settings, mark: "M6 3v18M12 3v18M18 3v18M3.5 15h5M9.5 7h5M15.5 12h5" },
];

/** Listings stays lit on everything that belongs to a listing. */
function isHere(path: string, href: string): boolean {
  if (href === "/")
    return ["/", "/new"].includes(path) || /^\/(?:listing|compare|decisions)(?:\/|$)/.test(path);
  if (href === "/settings") return ["/settings", "/backup"].includes(path) || path.startsWith("/bench");
  return path.startsWith(href);
}

export function Foot() {
  const { path } = useLocation();
  return (
    <nav class="foot" aria-label={words.sections}>
      {screens.map((s) => (
        <a key={s.href} href={s.href} {...(isHere(path, s.href) ? { "aria-current": "page" as const } : {})}>
          <svg viewBox="0 0 24 24" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2">
            <path d={s.mark} />
          </svg>
          <span>{s.title}</span>
        </a>
      ))}
    </nav>
  );
}
