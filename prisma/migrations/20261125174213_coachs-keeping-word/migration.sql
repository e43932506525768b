-- CreateTable
CREATE TABLE "KeepingWord" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "causeId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "document" TEXT NOT NULL,
    "byId" TEXT,
    "at" DATETIME NOT NULL,
    CONSTRAINT "KeepingWord_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "KeepingWord_byId_fkey" FOREIGN KEY ("byId") REFERENCES "Member" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "KeepingWord_causeId_key" ON "KeepingWord"("causeId");

-- CreateIndex
CREATE INDEX "KeepingWord_byId_idx" ON "KeepingWord"("byId");

-- CreateIndex
CREATE UNIQUE INDEX "KeepingWord_revisionId_position_key" ON "KeepingWord"("revisionId", "position");
