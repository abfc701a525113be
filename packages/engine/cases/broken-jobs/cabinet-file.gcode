stillair: 1
title: Not a job
cabinet: { inside: 1 m x 1 m x 1 m }
