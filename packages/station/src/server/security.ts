// Who may ask, and what a browser may do with the answers. The server is for pages that it has served itself, on this
// machine: other sites a browser visits, and other names that lead here, get nothing.

/** Directives of the content security policy (W3C CSP level 3) that no answer changes. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
];

/** Headers of every answer. The text editor writes style elements of its own, which carry `styleNonce`. */
export function securityHeaders(styleNonce?: string): Readonly<Record<string, string>> {
  const styles = styleNonce === undefined ? "style-src 'self'" : `style-src 'self' 'nonce-${styleNonce}'`;
  return {
    'Content-Security-Policy': [...POLICY, styles].join('; '),
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Embedder-Policy': 'require-corp',
    'Cross-Origin-Resource-Policy': 'same-origin',
  };
}

/** How a browser may name the server at this port; it leaves the usual port of HTTP out. */
export function hostsAt(port: number): string[] {
  const names = ['127.0.0.1', 'localhost'];
  return [...names.map((name) => `${name}:${port}`), ...(port === 80 ? names : [])];
}

/**
 * Why a request is not answered, or undefined when it is. A foreign name that was made to lead to this machine is seen
 * by its Host; a foreign page by its Origin (RFC 6454) and Sec-Fetch-Site (W3C Fetch Metadata). Programs other than
 * browsers send neither of these, and need not.
 */
export function refusal(request: Request, hosts: readonly string[]): string | undefined {
  const url = new URL(request.url);
  const host = request.headers.get('host')?.toLowerCase() ?? '';
  if (!hosts.includes(host) || !hosts.includes(url.host)) {
    return `this server answers to ${hosts[0]} and ${hosts[1]} only`;
  }
  const reads = request.method === 'GET' || request.method === 'HEAD';
  if (reads && !url.pathname.startsWith('/api/')) return undefined; // a link from elsewhere may open the page
  const origin = request.headers.get('origin');
  if (origin !== null && origin !== `http://${host}`) return 'pages of other sites are not answered';
  const site = request.headers.get('sec-fetch-site');
  if (site === null || site === 'same-origin' || (reads && site === 'none')) return undefined;
  return 'pages of other sites are not answered';
}
