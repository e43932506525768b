-- DropIndex
DROP INDEX "Reminder_nonce_idx";
