import { storeContract } from "./contract.ts";
import { sqlitePlace } from "./sqlite-place.ts";

storeContract("the store on a SQLite file", sqlitePlace);
