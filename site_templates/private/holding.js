if (container) fetchSession();
