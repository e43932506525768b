import { request } from "node:http";
import { connect } from "node:net";

export interface Got {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly body: string;
}

/** One request over the network, its host header and method as the test wants them. */
export function get(
  port: number,
  path: string,
  how: { readonly method?: string; readonly host?: string; readonly body?: string } = {},
): Promise<Got> {
  const headers = how.host === undefined ? {} : { host: how.host };
  return new Promise((resolve, reject) => {
    const asking = request(
      { host: "127.0.0.1", port, path, method: how.method ?? "GET", headers, agent: false },
      (response) => {
        let body = "";
        response.setEncoding("utf8").on("data", (chunk: string) => {
          body += chunk;
        });
        response.on("end", () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
        );
      },
    );
    asking.on("error", reject);
    asking.end(how.body);
  });
}

/** Sends bytes as they are and gives what comes back until the other side closes. */
export function sendRaw(port: number, bytes: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, "127.0.0.1", () => socket.write(bytes));
    let heard = "";
    socket.setEncoding("utf8").on("data", (chunk: string) => {
      heard += chunk;
    });
    socket.on("close", () => resolve(heard));
    socket.on("error", reject);
  });
}

/** The samples of a page in the Prometheus text format: name with labels -> value. */
export function samples(page: string): ReadonlyMap<string, number> {
  const lines = page.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  return new Map(
    lines.map((line) => {
      const at = line.lastIndexOf(" ");
      return [line.slice(0, at), Number(line.slice(at + 1))];
    }),
  );
}
